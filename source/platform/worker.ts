import fs from 'node:fs';
import {fileURLToPath} from 'node:url';
import {Worker} from 'node:worker_threads';

/** Long work on a thread of its own. */
export type Work<Ask, News> = {
	readonly ask: (ask: Ask) => void;
	/** Ends it at once, whatever it is doing. */
	readonly stop: () => void;
	readonly onNews: (listener: (news: News) => void) => void;
};

/**
Starts the worker of the built program. What it throws comes as `onTrouble`.

@throws {Error} If there is no built worker: the source itself is not run by Node.
*/
export function startWork<Ask, News>(
	onNews: (news: News) => void,
	onTrouble: (text: string) => void,
): Pick<Work<Ask, News>, 'ask' | 'stop'> {
	const worker = new Worker(workPath(), {
		// Recordings and their spectra; more than this no round asks for.
		resourceLimits: {maxOldGenerationSizeMb: 512},
	});
	let isStopped = false;
	worker.on('message', (news: News) => {
		if (!isStopped) onNews(news);
	});
	worker.on('error', error => {
		if (!isStopped) onTrouble(error.message);
	});
	worker.unref();
	return {
		ask: ask => worker.postMessage(ask),
		stop: () => {
			isStopped = true;
			void worker.terminate();
		},
	};
}

/** Beside the chunk that asks, or a folder up. */
function workPath(): string {
	const found = ['./work.cjs', '../work.cjs', '../dist/work.cjs', '../../dist/work.cjs']
		.map(relative => fileURLToPath(new URL(relative, import.meta.url)))
		.find(path => fs.existsSync(path));
	if (found === undefined) throw new Error('The program is not built: run npm run build.');
	return found;
}
