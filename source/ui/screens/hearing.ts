import type {Profile} from '../../profile/types.ts';
import type {RoundSize} from '../../study/hearing/roundCode.ts';
import {hearingKeymap} from '../hearing/keymap.ts';
import {namesAfter, roundLeftOut, withOrWithout} from '../hearing/marks.ts';
import {type HearingState, hearingStart} from '../hearing/state.ts';
import {commandOf} from '../keys/binding.ts';
import type {Press} from '../keys/press.ts';
import {hear, lookForRecordings, understandAnew} from './hearingOrders.ts';
import {takeHeard} from './hearingTake.ts';
import type {AppScreen, HearingScreen, WalkScreen, World} from './screen.ts';

/** Opens the recorded round from the walk: where it was left, or at the sheet. */
export function openHearing(back: WalkScreen, round: 'first' | 'proof', {recordings}: World): AppScreen {
	if (!recordings) return back;
	const {hearing: left, ...walk} = back;
	const isSame = left?.round === round;
	if (left && !isSame) recordings.stop();
	return {
		kind: 'hearing',
		back: walk,
		hearing: isSame ? left : hearingStart(round, recordings.usualFolder, sizeBefore(walk.state.subject)),
	};
}

/** The file that was played last, as far as what is kept of it tells: one that plays is found again. */
function sizeBefore({responses = []}: Profile): RoundSize {
	const lines = responses.filter(({part = 'all', recording}) => part === 'all' && recording !== undefined);
	const newest = lines.at(-1)?.recording;
	const isMore = lines.some(
		({recording, source}) => recording === newest && source !== 'FL' && source !== 'FR',
	);
	return isMore ? 'all' : 'two';
}

/** Lines that an arrow scrolls. */
const scrollLines = 3;

/** One key in a recorded round. Hearing goes on meanwhile. */
export function pressHearing(screen: HearingScreen, press: Press, world: World): AppScreen {
	const {hearing} = screen;
	const to = (change: Partial<HearingState>): HearingScreen => ({
		...screen,
		hearing: {...hearing, note: undefined, ...change},
	});
	const command = commandOf(hearingKeymap, hearing.step, press);
	if (!command) {
		const isText = press.key === 'character' || press.key === 'characters';
		return hearing.step === 'arrive' && isText ? to({typed: hearing.typed + press.text}) : screen;
	}

	switch (command) {
		case 'two':
		case 'all':
		case 'bass':
			return to({size: command, from: 0});
		case 'write':
			return writtenRound(screen, to, world);
		case 'erase':
			return to({typed: [...hearing.typed].slice(0, -1).join('')});
		case 'eraseAll':
			return to({typed: ''});
		case 'up':
		case 'down':
			return movedCursor(screen, to, command === 'up' ? -1 : 1);
		case 'goOn':
			return hearingGoOn(screen, to, world);
		case 'other':
			if (hearing.step === 'arrive')
				return hearing.report ? to({step: 'playings', cursor: 0, from: 0}) : screen;
			return to({step: hearing.step === 'lines' ? 'playings' : 'lines', cursor: 0, from: 0});
		case 'more':
			return to({from: hearing.from + 12});
		case 'back':
			return stepBack(screen, to, world);
		case 'walk':
			return leaveToWalk(screen);
		case 'seat':
		case 'changes':
			return understandAnew(to({names: namesAfter(heardProfile(screen), hearing, command)}), world);
		case 'leaveOut':
			return understandAnew(
				to(
					hearing.step === 'playings'
						? {names: namesAfter(heardProfile(screen), hearing, 'spare')}
						: {leftOut: withOrWithout(hearing.leftOut, roundLeftOut(hearing))},
				),
				world,
			);
		case 'latency':
			return to({latencies: withOrWithout(hearing.latencies, lateAt(hearing))});
	}
}

const heardProfile = ({back}: HearingScreen): Profile => back.state.subject;

/** Channel under the cursor, where it comes late. */
function lateAt({report, cursor}: HearingState): string | undefined {
	const channel = report?.rounds.flatMap(({base}) => base.playing.lines)[cursor]?.channel;
	return report?.offers.latencies.find(each => each.channel === channel)?.channel;
}

type To = (change: Partial<HearingState>) => HearingScreen;

function writtenRound({back, hearing}: HearingScreen, to: To, {recordings}: World): AppScreen {
	const result = recordings!.writeRound(back.file, back.state.subject, hearing.size);
	return to({
		note: result.ok ? {kind: 'said', text: `Written to ${result.path}.`} : {kind: 'no', text: result.text},
	});
}

function movedCursor({hearing}: HearingScreen, to: To, by: number): AppScreen {
	const {step, report, arrived, cursor, from} = hearing;
	if (step === 'sheet') return to({from: Math.max(0, from + scrollLines * by)});
	const rows =
		step === 'arrive'
			? arrived.length
			: step === 'playings'
				? (report?.rows.length ?? 0)
				: (report?.rounds.reduce((sum, {base}) => sum + base.playing.lines.length, 0) ?? 0);
	return to({cursor: Math.max(0, Math.min(rows - 1, cursor + by)), from: 0});
}

function hearingGoOn(screen: HearingScreen, to: To, world: World): AppScreen {
	const {hearing} = screen;
	if (hearing.step === 'sheet')
		return lookForRecordings(to({step: 'arrive', cursor: 0, from: 0}), world, true);
	if (hearing.step !== 'arrive') return takeHeard(screen, world);
	const typed = hearing.typed.trim();
	if (typed === '') {
		const chosen = hearing.arrived[hearing.cursor];
		if (chosen) return hear(to({}), chosen.path, world);
		return hearing.report ? to({step: 'playings', cursor: 0}) : screen;
	}

	const found = world.recordings!.find(typed);
	switch (found.kind) {
		case 'file':
			return hear(to({typed: ''}), found.path, world);
		case 'folder':
			return lookForRecordings(to({typed: '', folder: found.path, known: []}), world, true);
		case 'no':
			return to({note: {kind: 'no', text: found.text}});
	}
}

/** A step back; while something is being heard it is stopped first. */
function stepBack(screen: HearingScreen, to: To, {recordings}: World): AppScreen {
	const {step, typed, waiting} = screen.hearing;
	if (step === 'lines' || step === 'playings') return to({step: 'arrive', cursor: 0, from: 0});
	if (step === 'sheet') return leaveToWalk(screen);
	if (typed !== '') return to({typed: ''});
	if (waiting.length === 0) return to({step: 'sheet', from: 0});
	recordings!.stop();
	return to({
		waiting: [],
		progress: undefined,
		report: undefined,
		names: {},
		leftOut: [],
		note: {kind: 'note', text: 'Stopped. Nothing was taken.'},
	});
}

/** Back to the walk; what is being heard goes on. */
function leaveToWalk({back: walk, hearing}: HearingScreen): WalkScreen {
	return {...walk, hearing: {...hearing, note: undefined}};
}
