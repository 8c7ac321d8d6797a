import {describe, expect, test} from 'vitest';
import type {
	Explanation,
	Mistake,
	ProofResult,
} from '../../../../source/study/calibration/proof/proofResult.ts';
import {prove} from '../../../../source/study/calibration/proof/prove.ts';
import {
	drawRoom,
	type Entries,
	mains,
	normal,
	type SimulatedRoom,
	simulate,
	uniform,
} from './simulatedRoom.ts';

const controls = [...mains, 'out1', 'out2'];

/** A room without noise, for single cases that can be worked by hand. */
const still: SimulatedRoom = {
	noiseDb: 0,
	repeats: 2,
	ownDb: {
		FL: 75.4,
		FR: 71,
		FC: 73.9,
		LS: 78,
		RS: 76,
		BL: 74,
		BR: 75,
		TpFL: 71,
		TpFR: 72.1,
		sub1: 79,
		sub2: 72,
	},
	former: {FL: 1, FR: 0, FC: 0, LS: -1, RS: 0, BL: 0, BR: 0, TpFL: 1, TpFR: 0, LFE1: 0, out1: 0, out2: 0},
	intended: {
		FL: -0.5,
		FR: 4,
		FC: 1,
		LS: -3,
		RS: -1,
		BL: 1,
		BR: 0,
		TpFL: 4,
		TpFR: 3,
		LFE1: 0,
		out1: -4,
		out2: 3,
	},
};
const silent = () => 0;
const isOnly = (code: Mistake['code'], about: readonly string[]) => (explanation: Explanation) =>
	explanation.mistakes.length === 1 &&
	explanation.mistakes[0]!.code === code &&
	[...explanation.mistakes[0]!.about].sort().join() === [...about].sort().join();

test('`prove` says that there is no second round, and what should be read', () => {
	const profile = simulate(still, still.intended, 0, silent);
	const result = prove({...profile, meter: profile.meter!.filter(({round}) => round === 'first')});
	expect(result.verdict).toBe('none');
	expect(result.missing).toHaveLength(12);
	expect(result.remarks.map(({code}) => code)).toContain('proof-second-round-missing');
});

test('`prove` says that no settings are stored, and that no first round was read', () => {
	const profile = simulate(still, still.intended, 0, silent);
	expect(prove({...profile, settings: []}).remarks[0]?.code).toBe('proof-settings-missing');
	expect(prove({...profile, meter: []}).remarks[0]?.code).toBe('proof-first-round-missing');
});

test('`prove` predicts own level plus the new trim, and the sum of two subs assumed in phase', () => {
	const profile = simulate(still, still.intended, 0, silent);
	const {missing, readings} = prove(profile);
	const of = (name: string) => [...readings, ...missing].find(item => item.name === name)?.predicted.value;
	expect(of('Front left')).toBeCloseTo(74.9, 9);
	expect(of('Front centre')).toBeCloseTo(74.9, 9);
	expect(of('Sub 1')).toBeCloseTo(75, 9);
	// Two equal levels in phase: 20·lg 2 = 6.02 dB more.
	expect(of('Sub 1 and Sub 2')).toBeCloseTo(75 + 20 * Math.log10(2), 9);
});

test('`prove` takes a moved master volume out first and reports it', () => {
	const result = prove(simulate(still, still.intended, -3, silent));
	// Nobody read the subs together: the round stays open, and says so.
	expect(result.verdict).toBe('open');
	expect(result.missing.map(({name}) => name)).toEqual(['Sub 1 and Sub 2']);
	expect(result.readings.every(({verdict}) => verdict === 'met')).toBe(true);
	expect(result.masterShiftDb?.value).toBeCloseTo(-3, 2);
	expect(result.remarks.map(({code}) => code)).toContain('proof-master-moved');
});

test('`prove` names a turned sign, with the value that then stands there and the check', () => {
	const result = prove(simulate(still, {...still.intended, FR: -4}, 0, silent));
	expect(result.verdict).toBe('missed');
	expect(result.findings).toHaveLength(1);
	const [best] = result.findings[0]!.explanations;
	expect(best).toMatchObject({trust: 'certain', mistakes: [{code: 'slip-sign', about: ['FR']}]});
	expect(best!.mistakes[0]!.facts).toMatchObject({
		standsDb: -4,
		shouldDb: 4,
		control: {box: 'receiver', id: 'FR'},
	});
});

test('`prove` names two swapped entries even with the master volume moved', () => {
	const result = prove(simulate(still, {...still.intended, FR: -3, LS: 4}, 2, silent));
	expect(result.findings[0]!.explanations[0]).toMatchObject({
		mistakes: [{code: 'slip-swapped', about: ['FR', 'LS']}],
	});
	expect(result.masterShiftDb?.value).toBeCloseTo(2, 1);
});

test('`prove` names both explanations when a forgotten entry and a turned sign fit alike', () => {
	const room = {...still, former: {...still.former, FR: -4}};
	const {findings} = prove(simulate(room, {...room.intended, FR: -4}, 0, silent));
	const kinds = findings[0]!.explanations.map(({mistakes}) => mistakes[0]!.code);
	expect(kinds.slice(0, 2).sort()).toEqual(['slip-forgotten', 'slip-sign']);
	expect(findings[0]!.explanations[0]!.trust).not.toBe('certain');
});

test('`prove` names unstored settings once, not channel by channel', () => {
	const {findings} = prove(
		simulate(
			still,
			{...still.intended, ...Object.fromEntries(mains.map(id => [id, still.former[id]!]))},
			0,
			silent,
		),
	);
	expect(findings[0]!.explanations[0]!.mistakes.map(({code}) => code)).toEqual(['slip-all-forgotten']);
});

test('`prove` finds two mistakes in two channels apart', () => {
	const {findings} = prove(simulate(still, {...still.intended, FR: -4, out1: 0}, 0, silent));
	expect(findings).toHaveLength(2);
	expect(findings.some(({explanations}) => explanations.some(isOnly('slip-sign', ['FR'])))).toBe(true);
	expect(findings.some(({explanations}) => explanations.some(isOnly('slip-forgotten', ['out1'])))).toBe(true);
});

test('`prove` calls a level that no entry explains something else, never certain', () => {
	const room = {...still, ownDb: {...still.ownDb}};
	const profile = simulate(room, {...room.intended, FC: room.intended.FC! - 7.3}, 0, silent);
	const best = prove(profile).findings[0]!.explanations[0]!;
	expect(best.mistakes[0]!.code).toBe('slip-unexplained');
	expect(best.trust).not.toBe('certain');
});

test('`prove` says of stale settings that they are', () => {
	const profile = simulate(still, still.intended, 0, silent);
	const settings = profile.settings!.map(set => (set.id === 'now' ? {...set, inputsHash: 'other'} : set));
	expect(prove({...profile, settings}).remarks.map(({code}) => code)).toContain('proof-settings-stale');
});

describe('over seeded rounds with meter noise of 0.2 to 0.5 dB', () => {
	const isAlarm = ({verdict, findings, readings}: ProofResult) =>
		verdict === 'missed' || findings.length > 0 || readings.some(reading => reading.verdict !== 'met');

	test('`prove` raises a false alarm in at most 1 % of 1000 clean rounds', () => {
		const random = uniform(11);
		const noise = normal(random);
		let alarms = 0;
		let shifts = 0;
		for (let round = 0; round < 1000; round++) {
			const room = drawRoom(random, 2);
			const result = prove(simulate(room, room.intended, 0, noise));
			if (isAlarm(result)) alarms++;
			if (result.masterShiftDb?.isMoved) shifts++;
		}

		expect(alarms).toBeLessThanOrEqual(10);
		expect(shifts).toBeLessThanOrEqual(10);
	});

	type Planted = {readonly typed: Entries; readonly about: readonly string[]};
	const plant: Record<
		'slip-sign' | 'slip-forgotten' | 'slip-other-step' | 'slip-swapped',
		(room: SimulatedRoom, id: string, random: () => number) => Planted
	> = {
		'slip-sign': ({intended}, id) => ({typed: {...intended, [id]: -intended[id]!}, about: [id]}),
		'slip-forgotten': ({intended, former}, id) => ({typed: {...intended, [id]: former[id]!}, about: [id]}),
		'slip-other-step': ({intended}, id, random) => ({
			typed: {...intended, [id]: intended[id]! * (random() < 0.5 ? 2 : 0.5)},
			about: [id],
		}),
		'slip-swapped'({intended}, id, random) {
			const box = controls.filter(other => other !== id && other.startsWith('out') === id.startsWith('out'));
			const other = box[Math.floor(random() * box.length)]!;
			return {typed: {...intended, [id]: intended[other]!, [other]: intended[id]!}, about: [id, other]};
		},
	};

	test.each(['slip-sign', 'slip-forgotten', 'slip-other-step', 'slip-swapped'] as const)(
		'`prove` names a planted mistake of 2.5 dB and more (another step: 3 dB) among what fits, in 95 % of 250 rounds or more: %s',
		kind => {
			const random = uniform(23);
			const noise = normal(random);
			let rounds = 0;
			let named = 0;
			let first = 0;
			while (rounds < 250) {
				const room = drawRoom(random, 2);
				const id = controls[Math.floor(random() * controls.length)]!;
				const {typed, about} = plant[kind](room, id, random);
				// Below that a round with limits of 1.9 dB does not miss it for sure; half or twice a trim has the most rivals.
				const leastDb = kind === 'slip-other-step' ? 3 : 2.5;
				if (Math.max(...about.map(one => Math.abs(typed[one]! - room.intended[one]!))) < leastDb) continue;
				rounds++;
				const masterDb = rounds % 2 === 0 ? 0 : 6 * random() - 3;
				const {verdict, findings} = prove(simulate(room, typed, masterDb, noise));
				const finding = findings.find(({explanations}) => explanations.some(isOnly(kind, about)));
				if (verdict === 'missed' && finding) named++;
				if (finding && isOnly(kind, about)(finding.explanations[0]!)) first++;
			}

			expect(named).toBeGreaterThanOrEqual(0.95 * rounds);
			expect(first).toBeGreaterThanOrEqual(0.85 * rounds);
		},
		120_000,
	);
});
