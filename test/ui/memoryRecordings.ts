import {distancesOf} from '../../source/study/calibration/distancesOf.ts';
import {openedSound} from '../../source/study/hearing/openedSound.ts';
import type {HearingNews, HearingOrder} from '../../source/study/hearing/orders.ts';
import {type HearingDesk, hearingDesk} from '../../source/study/hearing/report.ts';
import type {Arrived, Recordings} from '../../source/ui/recordings.ts';
import {solve} from '../afresh.ts';

/** A folder of recordings in memory, heard on this thread step by step when the test asks. */
export type MemoryRecordings = Recordings & {
	/** Puts a file into the watched folder. */
	readonly arrive: (name: string, bytes: Uint8Array) => void;
	/** Hears what was ordered, in steps; `afterEach` is called between them. */
	readonly work: (afterEach?: () => void) => Promise<void>;
	readonly orders: HearingOrder[];
	stops: number;
};

export const watched = '/home/someone/Downloads';

export function memoryRecordings(): MemoryRecordings {
	const files = new Map<string, {bytes: Uint8Array; changedMs: number}>();
	const orders: HearingOrder[] = [];
	let open: HearingOrder[] = [];
	let tell: (news: HearingNews) => void = () => {};
	let desk: HearingDesk = hearingDesk(text => String(text.length));
	let stops = 0;
	const memory: MemoryRecordings = {
		usualFolder: watched,
		orders,
		get stops() {
			return stops;
		},
		set stops(value) {
			stops = value;
		},
		look: folder =>
			folder === watched
				? [...files].map(
						([path, {bytes, changedMs}]): Arrived => ({
							path,
							name: path.slice(path.lastIndexOf('/') + 1),
							bytes: bytes.length,
							changedMs,
						}),
					)
				: undefined,
		find: typed =>
			files.has(typed) ? {kind: 'file', path: typed} : {kind: 'no', text: `${typed}: nothing is there.`},
		order(order) {
			orders.push(order);
			open.push(order);
		},
		stop() {
			stops += 1;
			open = [];
			desk = hearingDesk(text => String(text.length));
		},
		onNews: listener => {
			tell = listener;
		},
		writeRound: (file, _profile, size) => ({ok: true, path: `${file}-round/${size}.wav`}),
		arrive: (name, bytes) => files.set(`${watched}/${name}`, {bytes, changedMs: Date.UTC(2026, 3, 18)}),
		async work(afterEach = () => {}) {
			while (open.length > 0) {
				const order = open.shift()!;
				const {profile, ask} = order;
				if (order.kind === 'hear') {
					const {bytes} = files.get(order.path)!;
					const name = order.path.slice(order.path.lastIndexOf('/') + 1);
					const opened = await openedSound({name, sha256: 'ab', bytes}, async () => undefined);
					for (const {step, done, of} of desk.hear(opened, profile)) {
						tell({kind: 'progress', path: order.path, step, done, of});
						afterEach();
					}
				}

				tell({kind: 'report', report: desk.report(profile, distancesOf(solve(profile)), ask), isDone: true});
			}
		},
	};
	return memory;
}
