import type {Profile} from '../../profile/types.ts';
import type {WalkScreen, World} from './screen.ts';

/** The profile as it goes to disk: with the place where the walk stands. */
function withPlace(profile: Profile, promptId: string): Profile {
	return {...profile, walk: {...profile.walk, prompt: promptId}};
}

/**
Saves the walk and remembers the new state of the file. A refusal becomes `trouble`, which is told and decided by the
user; the answers stay in memory meanwhile.

@param isForced - Write over whatever another program wrote.
*/
export function saveWalk(screen: WalkScreen, {files}: World, isForced = false): WalkScreen {
	const {file, mark, state} = screen;
	const saved = files.save(file, withPlace(state.subject, state.promptId), isForced ? undefined : mark);
	if (!saved.ok) return {...screen, isUnsaved: true, trouble: {why: saved.why, text: saved.text}};
	return {
		...screen,
		mark: saved.mark,
		isUnsaved: false,
		trouble: undefined,
		keptPromptId: state.promptId,
	};
}

/** Writes the place where the walk stands, where that moved since the last save and nobody else has the file open. */
export function keepPlace(screen: WalkScreen, world: World): WalkScreen {
	const isKept = (screen.isShared || screen.keptPromptId === screen.state.promptId) && !screen.isUnsaved;
	return isKept || screen.trouble ? screen : saveWalk(screen, world);
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
		keptPromptId: screen.state.promptId,
		state: {...screen.state, notes: [{kind: 'note', text: `Kept in ${created.file} from here on.`}]},
	};
}
