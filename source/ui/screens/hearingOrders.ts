import type {HearingNews} from '../../study/hearing/orders.ts';
import type {HearingAsk} from '../../study/hearing/understand.ts';
import type {HearingState} from '../hearing/state.ts';
import type {Arrived} from '../recordings.ts';
import type {AppScreen, HearingScreen, World} from './screen.ts';

/** How the user wants recordings to be understood. */
function askOf({round, names, leftOut}: HearingState, {now}: World): HearingAsk {
	return {round, names, leftOut, takenAt: now().toISOString()};
}

const withState = (screen: HearingScreen, change: Partial<HearingState>): HearingScreen => ({
	...screen,
	hearing: {...screen.hearing, ...change},
});

/** Orders a recording to be heard, after those that wait. */
export function hear(screen: HearingScreen, path: string, world: World): HearingScreen {
	const {hearing, back} = screen;
	if (hearing.waiting.includes(path)) return screen;
	world.recordings!.order({
		kind: 'hear',
		path,
		profile: back.state.subject,
		ask: askOf(hearing, world),
	});
	return withState(screen, {
		waiting: [...hearing.waiting, path],
		known: [...hearing.known, path],
	});
}

/** Asks for what was heard once more, as the user now names it. */
export function understandAnew(screen: HearingScreen, world: World): HearingScreen {
	const {hearing, back} = screen;
	if (!hearing.report) return screen;
	world.recordings!.order({
		kind: 'understand',
		profile: back.state.subject,
		ask: askOf(hearing, world),
	});
	return withState(screen, {waiting: [...hearing.waiting, '']});
}

/**
Looks into the watched folder: what arrived since, and grows no more, is heard at once.

@param isFirst - What lies there already is only shown.
*/
export function lookForRecordings(screen: HearingScreen, world: World, isFirst = false): HearingScreen {
	const {folder, arrived: before, known, isFolderMissing = false} = screen.hearing;
	const arrived = world.recordings!.look(folder);
	if (!arrived) return isFolderMissing ? screen : withState(screen, {arrived: [], isFolderMissing: true});
	if (isFirst)
		return withState(screen, {
			arrived,
			known: [...known, ...arrived.map(({path}) => path)],
			isFolderMissing: false,
		});
	if (!isFolderMissing && isSame(arrived, before)) {
		const fresh = arrived.filter(({path, bytes}) => bytes > 0 && !known.includes(path));
		// The oldest first, as they were recorded.
		return fresh.toReversed().reduce((now, {path}) => hear(now, path, world), screen);
	}

	return withState(screen, {arrived, isFolderMissing: false});
}

function isSame(one: readonly Arrived[], other: readonly Arrived[]): boolean {
	return (
		one.length === other.length &&
		one.every(
			({path, bytes, changedMs}, index) =>
				path === other[index]!.path && bytes === other[index]!.bytes && changedMs === other[index]!.changedMs,
		)
	);
}

/** What comes from whoever hears, on whichever screen it was left. */
export function tellHearing(screen: AppScreen, news: HearingNews): AppScreen {
	if (screen.kind === 'hearing') return {...screen, hearing: told(screen.hearing, news)};
	if (screen.kind === 'walk' && screen.hearing) return {...screen, hearing: told(screen.hearing, news)};
	return screen;
}

function told(hearing: HearingState, news: HearingNews): HearingState {
	switch (news.kind) {
		case 'progress':
			return {...hearing, progress: {step: news.step, done: news.done, of: news.of}};
		case 'report': {
			const {report} = news;
			const waiting = news.isDone ? hearing.waiting.slice(1) : hearing.waiting;
			const isOver = waiting.length === 0;
			// Nobody has to ask for the table: it is there once all is heard, where something was.
			const step =
				isOver && hearing.step === 'arrive' && report.rows.length > 0 && news.isDone
					? 'playings'
					: hearing.step;
			return {
				...hearing,
				report,
				waiting,
				step,
				...(step !== hearing.step && {cursor: 0, from: 0}),
				...(news.isDone && {progress: undefined}),
			};
		}

		case 'trouble':
			return {...hearing, note: {kind: 'no', text: news.text}};
	}
}
