import {startRound} from '../walk/state.ts';
import {walkRound} from '../walk/stops.ts';
import type {WalkScreen, World} from './screen.ts';

/**
The walk of a file, at the prompt where it stopped; undefined where the file cannot be read. Where another app has it
open, that is told first.
*/
export function openWalk({files}: World, file: string): WalkScreen | undefined {
	const loaded = files.load(file);
	if (!loaded.ok) return undefined;
	const {profile, mark} = loaded;
	const kept = profile.walk?.prompt;
	const state = startRound(walkRound, profile, kept);
	const held = files.hold(file);
	const isResumed = kept !== undefined && state.promptId === kept;
	return {
		kind: 'walk',
		file,
		mark,
		state: isResumed ? {...state, notes: [{kind: 'note', text: 'Back where you stopped.'}]} : state,
		isUnsaved: false,
		keptPromptId: kept,
		...(!held.ok && {trouble: {why: 'held', text: held.text}, isShared: true}),
	};
}
