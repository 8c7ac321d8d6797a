import {recordingsFolder, soundFilesIn, typedPath} from '../platform/recordings.ts';
import {Trouble} from '../platform/trouble.ts';
import {startWork} from '../platform/worker.ts';
import {visibleText} from '../profile/visibleText.ts';
import type {HearingNews, HearingOrder} from '../study/hearing/orders.ts';
import type {Recordings} from '../ui/recordings.ts';
import {writeRoundFile} from './writeRound.ts';

/** Recordings as the app sees them; they are heard by a worker that is started with the first order. */
export function appRecordings(folder: string | undefined): Recordings {
	let work: ReturnType<typeof startWork<HearingOrder, HearingNews>> | undefined;
	let listener: (news: HearingNews) => void = () => {};
	return {
		usualFolder: recordingsFolder(folder),
		look: soundFilesIn,
		find(typed) {
			const {kind, path} = typedPath(typed);
			if (kind === 'none') return {kind: 'no', text: visibleText(`${path}: nothing is there. Type it anew.`)};
			return {kind, path};
		},
		order(order) {
			work ??= startWork<HearingOrder, HearingNews>(
				news => listener(news),
				text => {
					work = undefined;
					listener({
						kind: 'trouble',
						text: `Hearing stopped: ${visibleText(text)}. Try a shorter recording.`,
					});
				},
			);
			work.ask(order);
		},
		stop() {
			work?.stop();
			work = undefined;
		},
		onNews(tell) {
			listener = tell;
		},
		writeRound(file, profile, size) {
			const path = `${file.replace(/\.json$/i, '')}-round`;
			try {
				return {ok: true, path: `${path}/${writeRoundFile(profile, size, path, true).file}`};
			} catch (error) {
				if (error instanceof Trouble) return {ok: false, text: visibleText(error.problems.join('\n'))};
				throw error;
			}
		},
	};
}
