import type {Press} from '../keys/press.ts';
import {openHome} from './home.ts';
import {openWalk} from './openWalk.ts';
import {saveBeside, saveWalk} from './save.ts';
import type {AppScreen, Refusal, WalkScreen, World} from './screen.ts';

type Way = {
	readonly label: string;
	readonly go: (screen: WalkScreen, world: World) => AppScreen;
	/** What it gives up; it is asked about once more then. */
	readonly givesUp?: string;
};

const again: Way = {label: 'Try again', go: (screen, world) => saveWalk(screen, world)};

const beside: Way = {label: 'Keep my answers in a new file', go: saveBeside};

const carryOn: Way = {
	label: 'Go on; each answer tries again, the top line says NOT ON DISK',
	go: screen => ({...screen, trouble: undefined, goesOn: true}),
};

const leave: Way = {
	label: 'Leave; what is not on disk is dropped',
	go: (screen, world) => openHome(world, [], screen.file),
	givesUp: 'Answers that are not on disk are gone then.',
};

const ways: Readonly<Record<Refusal['why'], readonly Way[]>> = {
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
		{
			label: 'Write mine over the other, which is kept beside',
			go: (screen, world) => saveWalk(screen, world, true),
			givesUp: 'Commands and the app take yours from then on.',
		},
		{
			label: 'Take the other, drop my last answer',
			go: (screen, world) => ({...(openWalk(world, screen.file) ?? screen), isShared: screen.isShared}),
			givesUp: 'Answers of yours that are not on disk are gone then.',
		},
		leave,
	],
	busy: [
		again,
		beside,
		{
			label: 'Save all the same: nobody is saving it, the mark is left over',
			go: (screen, world) => saveWalk(screen, world, true),
			givesUp: 'What another program writes meanwhile is kept beside.',
		},
		carryOn,
		leave,
	],
	failed: [again, beside, carryOn, leave],
	unsound: [carryOn, leave],
};

/** What can be done about a refused save or a file that is open elsewhere, numbered from 1. */
export function waysOut(why: Refusal['why']): ReadonlyArray<Pick<Way, 'label' | 'givesUp'>> {
	return ways[why];
}

/** Longest answer that is looked at; what is longer was meant for a reading. */
const longest = 20;

/**
One key while a save stands refused, or before a file is opened that another has open. A number and Enter decide: a digit
alone may be one of a reading that was being typed. What gives something up is asked about once more.
*/
export function pressTrouble(screen: WalkScreen, press: Press, world: World): AppScreen {
	const {typed = '', ...trouble} = screen.trouble!;
	const put = (change: Partial<WalkScreen['trouble']>): WalkScreen => ({
		...screen,
		trouble: {...trouble, ...change},
	});
	switch (press.key) {
		case 'character':
		case 'characters':
			return put({typed: (typed + press.text).slice(0, longest)});
		case 'erase':
			return put({typed: typed.slice(0, -1)});
		case 'escape':
		case 'eraseAll':
			return put({doubted: undefined});
		case 'enter':
			break;
		default:
			return screen;
	}

	const answer = typed.trim().toLowerCase();
	if (trouble.doubted !== undefined) {
		const sure = ways[trouble.why][trouble.doubted]!;
		return answer === 'y' ? sure.go(screen, world) : put({doubted: undefined});
	}

	const index = /^\d$/.test(answer) ? Number(answer) - 1 : -1;
	const way = ways[trouble.why][index];
	if (!way) return put({});
	return way.givesUp === undefined ? way.go(screen, world) : put({doubted: index});
}
