import {outputFolder} from '../platform/outputFolder.ts';
import type {Profile} from '../profile/types.ts';
import {signalLines} from '../report/signals.ts';
import {seededRandom} from '../science/signal/seededRandom.ts';
import {waveFile} from '../science/signal/waveFile.ts';
import {planSignals} from '../study/playing/plan.ts';
import {signalRenderer} from '../study/playing/render.ts';

/** RMS of the files, dBFS: at reference gain 75 dB at the seat. */
const signalDbfs = -30;
/** Columns of the text that says how to play them. */
const textColumns = 80;

/**
Writes the test signals for a profile into a folder beside its file: `den-signals`. Files of an earlier time are replaced,
since they are made from the same profile.

@returns The folder.
@throws {Trouble} If the disk or the folder refuses.
*/
export function writeSignals(file: string, profile: Profile): string {
	const folder = `${file.replace(/\.json$/i, '')}-signals`;
	const plan = planSignals(profile, signalDbfs);
	const names = plan.files.map(({file: name}) => name);
	const write = outputFolder(folder, [...names, 'README.txt'], true);
	const text = [...plan.cautions, '', ...signalLines(plan, folder, textColumns)].join('\n');
	write('README.txt', new TextEncoder().encode(`${text}\n`));
	const render = signalRenderer(plan, seededRandom(1));
	let bytes: Uint8Array<ArrayBuffer> | undefined;
	for (const item of plan.files) {
		bytes = waveFile(render(item), bytes);
		write(item.file, bytes);
	}

	return folder;
}
