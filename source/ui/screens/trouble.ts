import type {Press} from '../keys/press.ts';
import {openHome} from './home.ts';
import {openWalk} from './openWalk.ts';
import {saveBeside, saveWalk} from './save.ts';
import type {Screen, WalkScreen, World} from './screen.ts';

type Way = {readonly label: string; readonly go: (screen: WalkScreen, world: World) => Screen};

const beside: Way = {label: 'Keep my answers in a new file', go: saveBeside};

const leave: Way = {
	label: 'Leave; what is not on disk is dropped',
	go: (screen, world) => openHome(world, [], screen.file),
};

type Why = NonNullable<WalkScreen['trouble']>['why'];

const ways: Readonly<Record<Why, readonly Way[]>> = {
	held: [
		{label: 'Back to the list', go: (screen, world) => openHome(world, [], screen.file)},
		{
			label: 'Look, or go on here too; nothing of the other is overwritten unasked',
			go(screen, world) {
				world.files.hold(screen.file, true);
				return {...screen, trouble: undefined};
			},
		},
	],
	changed: [
		beside,
		{label: 'Write mine over the other', go: (screen, world) => saveWalk(screen, world, true)},
		{
			label: 'Take the other, drop my last answer',
			go: (screen, world) => ({...(openWalk(world, screen.file) ?? screen), isShared: screen.isShared}),
		},
		leave,
	],
	failed: [
		{label: 'Try again', go: (screen, world) => saveWalk(screen, world)},
		beside,
		{
			label: 'Go on; each answer tries to save again',
			go: screen => ({...screen, trouble: undefined}),
		},
		leave,
	],
};

/** What can be done about a refused save or a file that is open elsewhere, numbered from 1. */
export function waysOut(why: Why): readonly string[] {
	return ways[why].map(({label}) => label);
}

/** One key while a save stands refused, or before a file is opened that another has open: a number decides; nothing else is taken until then. */
export function pressTrouble(screen: WalkScreen, press: Press, world: World): Screen {
	if (press.key !== 'character') return screen;
	return ways[screen.trouble!.why][Number(press.text) - 1]?.go(screen, world) ?? screen;
}
