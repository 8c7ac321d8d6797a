import type {Profile} from '../../../../source/profile/types.ts';
import {bassPrompts} from '../../../../source/ui/walk/bass/bass.ts';
import {
	type Boxes,
	roomProfile,
	type Truth,
	takeReading,
	trueLevel,
} from '../../../study/calibration/blend/room.ts';

/** An invented room whose sub arrives 4.3 ms late with the settings that stand. */
export const truth: Truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 80,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 14.3},
	levelDb: (id, hertz) => (id === 'FC' ? 75 : 76 + hertz / 100),
};
export const standing = {
	id: 'now',
	name: 'Now',
	origin: 'entered' as const,
	channels: {FC: {delayMs: {stepped: 10}, crossoverHertz: 80}, LFE1: {delayMs: {stepped: 8}}},
};
export const boxes: Boxes = {delayMs: {FC: 10, sub1: 8}};

export function bassProfile(changes: Partial<Profile> = {}): Profile {
	return roomProfile(truth, {settings: [standing], kit: {meterWeighting: 'Z'}, ...changes});
}

/** Answers questions of the stop as a meter in that room would, until none is open or `most` were answered. */
export function answered(profile: Profile, most = Number.POSITIVE_INFINITY): Profile {
	let now = profile;
	for (let count = 0; count < Math.min(most, 60); count++) {
		const prompt = bassPrompts(now).find(({isAnswered}) => !isAnswered);
		if (!prompt) break;
		const text = prompt.kind === 'choice' ? '1' : levelFor(now, prompt.id).toFixed(2);
		const taken = prompt.take(now, text, {takenAt: '2026-04-18T10:00:00Z'});
		if (taken.kind !== 'taken')
			throw new Error(`${prompt.id} did not take ${text}: ${JSON.stringify(taken)}`);
		now = taken.next;
	}

	return now;
}

/** Id of a prompt: `bass:FC|sub1 both later 80 3.1`, the pair, the part, the tone, the added delay. */
function levelFor(profile: Profile, id: string): number {
	const [, still, moved, part, hertz, added] = /^bass:(.*)\|(\S+) (\D+) (\d+)(?: (\S+))?$/.exec(id)!;
	const source = part === 'still' ? [still!] : part === 'moved' ? [moved!] : [still!, moved!];
	const step = {source, hertz: Number(hertz), addedDelayMs: Number(added ?? 0), seat: 'sofa'};
	return takeReading(truth, boxes, step, ['sub1'], 0, profile.settings![0]!.id).decibels;
}

/** Level of both at a tone with other delays, dB. */
export function bothWith(delayMs: Boxes['delayMs'], hertz: number): number {
	return trueLevel(truth, {delayMs}, ['FC', 'sub1'], hertz);
}
