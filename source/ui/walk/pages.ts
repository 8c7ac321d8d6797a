import {bassPage} from './bass/bassPage.tsx';
import {dialInPage} from './dialIn/dialInPage.tsx';
import {keepPage} from './keep/keepPage.tsx';
import type {Page} from './page.ts';
import {proofPage} from './proof/proofPage.tsx';
import {wiringPage} from './wiring/wiringPage.tsx';

// biome-ignore lint/suspicious/noExplicitAny: each page knows its own state; the walk only hands it back.
const pages: Readonly<Record<string, Page<any>>> = {
	bass: bassPage,
	dialIn: dialInPage,
	keep: keepPage,
	proof: proofPage,
	wiring: wiringPage,
};

/** The page of a stop; undefined where the stop asks questions. */
// biome-ignore lint/suspicious/noExplicitAny: as above.
export function pageOf(id: string): Page<any> | undefined {
	return pages[id];
}
