import {markOf} from './platform/profiles/read.ts';
import {decodeSound, readSoundFile} from './platform/soundFile.ts';
import {Trouble} from './platform/trouble.ts';
import {serveOrders} from './platform/workerPort.ts';
import {type SearchNews, type SearchOrder, searchProfile} from './study/arrangement/orders.ts';
import {distancesOf} from './study/calibration/distancesOf.ts';
import {partsWith} from './study/calibration/parts.ts';
import {solve} from './study/calibration/solve.ts';
import {openedSound} from './study/hearing/openedSound.ts';
import type {HearingNews, HearingOrder} from './study/hearing/orders.ts';
import {hearingDesk} from './study/hearing/report.ts';
import {adjustNetwork} from './study/survey/adjust.ts';

/** A worker's entry for long work: it hears recordings, or searches arrangements, while the app stays live. */
const desk = hearingDesk(text => markOf(new TextEncoder().encode(text)));
/** News of how far it is, at most this often, ms. */
const tellEveryMs = 100;

serveOrders<HearingOrder | SearchOrder, HearingNews | SearchNews>(async (order, tell) => {
	if (order.kind === 'search') searchFor(order, tell);
	else await hearFor(order, tell);
});

function searchFor({profile}: SearchOrder, tell: (news: SearchNews) => void): void {
	const work = searchProfile(profile, adjustNetwork(profile));
	let told = Number.NEGATIVE_INFINITY;
	let rows = 0;
	for (;;) {
		const next = work.next();
		if (next.done) {
			tell({kind: 'searched', rows: next.value});
			return;
		}

		const now = performance.now();
		if (now - told < tellEveryMs && next.value.rows.length === rows) continue;
		told = now;
		rows = next.value.rows.length;
		tell({kind: 'searching', step: next.value});
	}
}

async function hearFor(order: HearingOrder, tell: (news: HearingNews) => void): Promise<void> {
	const {profile, ask} = order;
	const report = (isDone: boolean) =>
		tell({
			kind: 'report',
			report: desk.report(
				profile,
				distancesOf(solve(profile, partsWith(profile, adjustNetwork(profile)))),
				ask,
			),
			isDone,
		});
	if (order.kind === 'hear') {
		const {path} = order;
		try {
			const opened = await openedSound(readSoundFile(path), decodeSound);
			let told = 0;
			let playings = 0;
			for (const progress of desk.hear(opened, profile)) {
				if (progress.playings > playings) {
					// First results while the rest is computed.
					playings = progress.playings;
					report(false);
				}

				const now = performance.now();
				if (now - told < tellEveryMs) continue;
				told = now;
				tell({kind: 'progress', path, step: progress.step, done: progress.done, of: progress.of});
			}
		} catch (error) {
			if (!(error instanceof Trouble)) throw error;
			tell({kind: 'trouble', path, text: error.problems.join('\n')});
		}
	}

	report(true);
}
