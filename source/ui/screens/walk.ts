import type {Profile} from '../../profile/types.ts';
import type {Press} from '../keys/press.ts';
import type {OpenPage} from '../walk/page.ts';
import {pressRound} from '../walk/pressRound.ts';
import {currentPrompt, reduceRound} from '../walk/state.ts';
import {doorOf, factsOf, walkRound} from '../walk/stops.ts';
import {compareWithOlder} from './compareOlder.ts';
import {openHearing} from './hearing.ts';
import {openHome} from './home.ts';
import {keepPlace, saveWalk} from './save.ts';
import type {AppScreen, WalkScreen, World} from './screen.ts';
import {pressTrouble} from './trouble.ts';

/** One key in the walk. Every change of the profile is on disk before this returns, or its refusal is told. */
export function pressWalk(screen: WalkScreen, press: Press, world: World): AppScreen {
	if (screen.trouble) return pressTrouble(screen, press, world);
	const after = pressCalm(screen, press, world);
	// What was refused while somebody typed is asked about only after the typed text was taken.
	const isDue = press.key === 'enter' && after.kind === 'walk' && after.refusal && !after.trouble;
	return isDue ? {...after, trouble: after.refusal, refusal: undefined} : after;
}

function pressCalm(screen: WalkScreen, press: Press, world: World): AppScreen {
	const at = world.now().toISOString();
	if (screen.state.isPlanShown && (press.key === 'enter' || press.key === 'escape'))
		return {...screen, state: reduceRound(walkRound, screen.state, {kind: 'plan'})};
	const onPage = pressPage(screen, press, at, world);
	if (onPage && onPage.kind !== 'walk') return onPage;
	if (onPage) return kept(screen, onPage, world);
	const {state, isLeaving} = pressRound(walkRound, screen.state, press, at);
	if (isLeaving) return leave(screen, world);
	return granted(kept(screen, withPage({...screen, state}), world), world);
}

/** Does what an answer asked of the screen: the test signals go beside the profile, and it is said where. */
function granted(screen: WalkScreen, world: World): WalkScreen {
	const {file, state} = screen;
	if (!state.wish) return screen;
	const written = world.files.writeSignals(file, state.subject);
	const note = written.ok
		? ({kind: 'note', text: `Written to ${written.path}. ${howToPlay[state.wish]}`} as const)
		: ({kind: 'no', text: written.text} as const);
	return {...screen, state: {...state, wish: undefined, notes: [...state.notes, note]}};
}

const howToPlay = {
	signals: 'From a stick or streamer: left-noise.wav first, no upmixing; the others are told in README.txt.',
	tones: 'From a stick or streamer, no upmixing. Each question names its file; README.txt tells them all.',
} as const;

/** Home again, with everything on disk; where that is refused the walk stays and says so. */
function leave(screen: WalkScreen, world: World): AppScreen {
	const after = keepPlace(screen, world);
	if (after.trouble) return after;
	return openHome(
		world,
		[{kind: 'note', text: `${screen.state.subject.name}: kept. Enter goes on where it stopped.`}],
		screen.file,
	);
}

/** Saves where the profile changed, and remembers what it was before, so that moved values can be told. */
function kept(before: WalkScreen, after: WalkScreen, world: World): WalkScreen {
	if (after.state.subject === before.state.subject) return after;
	const isUndo = after.state.past.length < before.state.past.length;
	const isSame = isSameMeasured(before.state.subject, after.state.subject);
	const previous = isUndo ? undefined : isSame ? before.previous : before.state.subject;
	const saved = saveWalk({...after, previous}, world);
	if (!saved.trouble) return saved;
	// What no file can hold is not taken in the first place, so that all the rest can be saved.
	if (saved.trouble.why === 'unsound') return refused(before, saved.trouble.text);
	return before.goesOn ? {...saved, trouble: undefined} : saved;
}

function refused(before: WalkScreen, text: string): WalkScreen {
	const notes = [{kind: 'no' as const, text: `Not taken, since no profile can hold it: ${text}`}];
	return {...before, state: {...before.state, notes}};
}

/** Whether two profiles differ in nothing but the walk's own notes. */
function isSameMeasured(a: Profile, b: Profile): boolean {
	const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
	return [...keys].every(key => key === 'walk' || a[key] === b[key]);
}

/** The screen with the page that it stands at, opened where it is new. */
export function withPage(screen: WalkScreen): WalkScreen {
	const prompt = currentPrompt(walkRound, screen.state);
	const door = doorOf(prompt);
	if (!door) return screen.page ? {...screen, page: undefined} : screen;
	if (screen.page?.id === prompt.id) return screen;
	return {...screen, page: {id: prompt.id, open: door(screen.state.subject)}};
}

function pressPage(screen: WalkScreen, press: Press, decidedAt: string, world: World): AppScreen | undefined {
	const {isPlanShown, table, jump, subject} = screen.state;
	// Keys for a page that something else hides would act unseen.
	if (isPlanShown || table || jump) return undefined;
	const there = withPage(screen);
	if (!there.page) return undefined;
	const {id, open} = there.page;
	const showing = (page: OpenPage): WalkScreen => ({...there, page: {id, open: page}});
	const pressed = open.press(subject, press, {decidedAt, walk: factsOf(subject)});
	switch (pressed.kind) {
		case 'none':
			return undefined;
		case 'state':
			return showing(pressed.state);
		case 'profile':
			return {
				...showing(pressed.state),
				state: reduceRound(walkRound, there.state, {kind: 'change', subject: pressed.profile}),
			};
		case 'write': {
			const written = pressed.documents.map(({ending, text}) =>
				world.files.writeBeside(there.file, ending, text),
			);
			return showing(pressed.after(written));
		}

		case 'compare':
			return compareWithOlder(there, world) ?? showing(pressed.withoutOlder);
		case 'hear':
			return openHearing(there, pressed.round, world);
		case 'go':
			return withPage({...there, state: reduceRound(walkRound, there.state, pressed)});
		case 'next':
		case 'previous': {
			const action =
				pressed.kind === 'next'
					? ({kind: 'take', takenAt: decidedAt} as const)
					: ({kind: 'previous'} as const);
			return withPage({...there, state: reduceRound(walkRound, there.state, action)});
		}
	}
}
