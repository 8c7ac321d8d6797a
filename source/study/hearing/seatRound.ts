import {finding} from '../../profile/finding.ts';
import {type StatedLowPasses, separateByLfe} from './apart/fromLfe.ts';
import {separate} from './apart/separate.ts';
import type {HearingFinding} from './facts.ts';
import type {HeardPlaying} from './heardPlaying.ts';
import {stateAgainst} from './heardState.ts';
import type {PlayingName, PlayingNames, PlayingRow, SeatRound} from './playingRow.ts';
import {isSpoiled, spoiledLines} from './soundness.ts';
import {shiftBetween, spotsOf} from './spots.ts';
import {asChanged, changesOf, isState, otherState} from './statesAsked.ts';
import type {SubGroup} from './visit.ts';

/** A microphone that moved further is no longer at the same spot, metres. @see the error of the parts over the way moved: −15 dB at 5 cm. */
const mostMovedMetres = 0.03;
const levelChangeDb = 1;

/**
Sorts playings by what they are: which seat, which state of the subs, which are spare.

Seats are taken in their order, one a spot of the microphone. At the first as it stands comes first and each group is changed
in turn; the next seat takes the changes back, so that as it stands comes last. A playing that something spoils is spare.

@param names - What a person said of single playings; it stands above what is read from the sound.
@param crossoverOf - Of a main channel in the settings in force, hertz.
@param byLfe - How one playing alone is told apart by its LFE sweep.
*/
export function seatRounds(
	playings: readonly HeardPlaying[],
	seats: readonly string[],
	groups: readonly SubGroup[],
	names: PlayingNames = {},
	crossoverOf: (channel: string) => number | undefined = () => undefined,
	byLfe?: {readonly lowPasses: StatedLowPasses; readonly group: SubGroup},
): {readonly rows: PlayingRow[]; readonly rounds: SeatRound[]} {
	const numbered = playings.map(
		(playing, index): NumberedPlaying => ({index, playing, name: names[index] ?? {}}),
	);
	const rows = numbered
		.filter(({name}) => name.isSpare)
		.map(
			(each): PlayingRow => ({
				...rowOf(each),
				state: {kind: 'unknown'},
				changed: [],
				isUsed: false,
				findings: [],
			}),
		);
	const rounds: SeatRound[] = [];
	for (const {seat, recorded, isBack} of placed(
		numbered.filter(({name}) => !name.isSpare),
		seats,
		groups.length,
	)) {
		const understood = spotRows(isBack ? recorded.toReversed() : recorded, seat, groups);
		rows.push(...understood);
		if (seat === undefined) continue;
		const chain = [0, ...groups.keys()].map((_, changes) =>
			understood.find(({isUsed, changed}) => isUsed && changed.length === changes),
		);
		const base = chain[0];
		if (!base) continue;
		const whole = chain.slice(0, groups.length + 1).flatMap(row => row ?? []);
		const changes = changesOf(whole.slice(1), groups);
		// One spoiled sweep would enter the mean of what the subs do.
		const spoiled = spoiledLines(whole.flatMap(({playing}) => playing.findings));
		const sound = whole.map(({playing}) => ({
			...playing,
			lines: playing.lines.filter(({channel}) => !spoiled.has(channel)),
		}));
		if (changes.length > 0) {
			const apart = separate(sound, changes, crossoverOf);
			rounds.push({seat, base, groups: asChanged(groups, changes), apart, apartBy: 'change'});
			continue;
		}

		const found = byLfe && separateByLfe(sound[0]!, byLfe.lowPasses, byLfe.group.id);
		rounds.push({
			seat,
			base,
			groups: found?.agreement.isGood ? [byLfe!.group] : [],
			...(found && {agreement: found.agreement}),
			...(found?.agreement.isGood && {apart: found, apartBy: 'lfe'}),
		});
	}

	return {rows: rows.sort((a, b) => a.index - b.index), rounds};
}

type NumberedPlaying = {readonly index: number; readonly playing: HeardPlaying; readonly name: PlayingName};

const rowOf = ({index, playing, name}: NumberedPlaying, seat = name.seat) => ({
	index,
	playing,
	...(seat !== undefined && {seat}),
});

/** Playings by spot of the microphone, each with its seat: the one that a person named, else the next in order. */
function placed(numbered: readonly NumberedPlaying[], seats: readonly string[], groupCount: number) {
	const spots = spotsOf(numbered.map(({playing}) => playing)).map(spot =>
		spot.map(playing => numbered.find(each => each.playing === playing)!),
	);
	const taken = new Set(numbered.flatMap(({name}) => name.seat ?? []));
	const free = seats.filter(seat => !taken.has(seat));
	const bySeat = new Map<string | number, NumberedPlaying[]>();
	const put = (key: string | number, each: NumberedPlaying) =>
		bySeat.set(key, [...(bySeat.get(key) ?? []), each]);
	for (const [index, spot] of spots.entries()) {
		// Who names one playing of a spot names the spot; who names several apart tells them apart.
		const named = spot.find(({name}) => name.seat !== undefined)?.name.seat;
		for (const each of spot) put(each.name.seat ?? named ?? index, each);
	}

	return [...bySeat].map(([key, recorded], at) => {
		const isNamed = recorded.some(({name}) => name.changes !== undefined);
		return {
			seat: typeof key === 'string' ? key : free.shift(),
			recorded,
			isBack: at % 2 === 1 && !isNamed && recorded.length === groupCount + 1 && groupCount > 0,
		};
	});
}

function spotRows(
	inOrder: readonly NumberedPlaying[],
	seat: string | undefined,
	groups: readonly SubGroup[],
): PlayingRow[] {
	const isFine = ({playing}: NumberedPlaying) => !isSpoiled(playing.findings);
	const stands =
		inOrder.find(({name}) => name.changes === 0) ?? inOrder.find(each => isFine(each) && !each.name.changes);
	const base = soundest(stands ?? inOrder[0]!, inOrder.filter(isFine)).playing;
	let next = 0;
	return inOrder.map((each): PlayingRow => {
		const {playing, name} = each;
		const row = rowOf(each, seat);
		const isSound = isFine(each) && seat !== undefined;
		if (playing === base)
			return {...row, state: {kind: 'as it stands'}, changed: [], isUsed: isSound, findings: []};
		const state = stateAgainst(base, playing, groups[0]?.moved?.addedMs);
		const findings = movedFindings(base, playing);
		const count = name.changes ?? next + 1;
		const expected = groups.slice(0, count);
		const fits =
			name.changes === undefined ? next < groups.length && isState(state, count, groups) : count > 0;
		if (!fits && state.kind !== 'as it stands' && name.changes === undefined)
			findings.push(otherState(state, groups));
		const isUsed = fits && isSound && !isSpoiled(findings);
		if (isUsed) next = count;
		return {...row, state, changed: isUsed ? expected.map(({id}) => id) : [], isUsed, findings};
	});
}

/** The playing with everything as it stands of which most lines are sound: whoever heard a slam has played it again. */
function soundest(stands: NumberedPlaying, others: readonly NumberedPlaying[]): NumberedPlaying {
	const spoiledOf = ({playing}: NumberedPlaying) => spoiledLines(playing.findings).size;
	if (stands.name.changes === 0 || spoiledOf(stands) === 0) return stands;
	return others
		.filter(
			({playing, name}) =>
				(name.changes ?? 0) === 0 &&
				playing.round.size === stands.playing.round.size &&
				stateAgainst(stands.playing, playing).kind === 'as it stands',
		)
		.reduce((best, each) => (spoiledOf(each) < spoiledOf(best) ? each : best), stands);
}

function movedFindings(base: HeardPlaying, playing: HeardPlaying): HearingFinding[] {
	const shift = shiftBetween(base, playing);
	if (!shift) return [];
	const findings: HearingFinding[] = [];
	if (shift.movedMetres > mostMovedMetres)
		findings.push(finding('problem', 'heard-microphone-moved', [], {metres: shift.movedMetres}));
	if (Math.abs(shift.db) > levelChangeDb)
		findings.push(finding('note', 'heard-level-changed', [], {changeDb: shift.db}));
	return findings;
}
