import type {Profile} from '../../profile/types.ts';
import type {WalkScreen, World} from './screen.ts';

/** The profile as it goes to disk: with the place where the walk stands. */
function withPlace(profile: Profile, promptId: string): Profile {
	return {...profile, walk: {...profile.walk, prompt: promptId}};
}

/**
Saves the walk and remembers the new state of the file. A refusal becomes `trouble`, which is told and decided by the
user; the answers stay in memory meanwhile.

@param isForced - Write over whatever another program wrote, which is kept, and whoever says to be saving.
*/
export function saveWalk(screen: WalkScreen, {files}: World, isForced = false): WalkScreen {
	const {file, mark, state} = screen;
	const saved = files.save(file, withPlace(state.subject, state.promptId), mark, isForced);
	if (!saved.ok) return {...screen, isUnsaved: true, trouble: {why: saved.why, text: saved.text}};
	const text = `The other version is kept in ${saved.otherFile}.`;
	return {
		...screen,
		mark: saved.mark,
		isUnsaved: false,
		trouble: undefined,
		refusal: undefined,
		goesOn: undefined,
		keptPromptId: state.promptId,
		...(saved.otherFile !== undefined && {state: {...state, notes: [{kind: 'note', text}]}}),
	};
}

/** Writes what is only in memory: answers that were refused, and the place, where nobody else has the file open. */
export function keepPlace(screen: WalkScreen, world: World): WalkScreen {
	const isKept = (screen.isShared || screen.keptPromptId === screen.state.promptId) && !screen.isUnsaved;
	return isKept || screen.trouble ? screen : saveWalk(screen, world);
}

/**
The same by itself, while somebody may be typing: a refusal shows in the header and takes no key. Where one stands
already nothing is tried: the answers themselves do so.
*/
export function keepQuietly(screen: WalkScreen, world: World): WalkScreen {
	if (screen.isUnsaved || screen.refusal) return screen;
	const after = keepPlace(screen, world);
	return after.trouble && after !== screen ? {...screen, refusal: after.trouble} : after;
}

/** Keeps the answers in a new file, beside the one that another program changed or the disk refused. */
export function saveBeside(screen: WalkScreen, world: World): WalkScreen {
	const created = world.files.create(withPlace(screen.state.subject, screen.state.promptId));
	if (!created.ok) return {...screen, trouble: {why: 'failed', text: created.text}};
	world.files.hold(created.file);
	return {
		...screen,
		isShared: false,
		file: created.file,
		mark: created.mark,
		isUnsaved: false,
		trouble: undefined,
		refusal: undefined,
		goesOn: undefined,
		keptPromptId: screen.state.promptId,
		state: {...screen.state, notes: [{kind: 'note', text: `Kept in ${created.file} from here on.`}]},
	};
}

/**
Keeps everything when the app is left in a hurry: in the file, and where that refuses answers, in a new one.

@returns What there is to tell: where answers went that are not in the file, or that they went nowhere.
*/
export function rescueWalk(screen: WalkScreen, world: World): string[] {
	const {isUnsaved, state, file} = screen;
	const {trouble} = keepPlace({...screen, trouble: undefined}, world);
	if (!trouble || !isUnsaved) return [];
	const created = world.files.rescue(withPlace(state.subject, state.promptId));
	return created.ok
		? [trouble.text, `Your answers that are not in ${file} are kept in ${created.file}, the whole round.`]
		: [trouble.text, created.text, `The answers since the last save of ${file} could not be kept anywhere.`];
}
