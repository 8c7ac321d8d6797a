import type {Profile} from '../../../../source/profile/types.ts';
import {blend} from '../../../../source/study/calibration/blend/blend.ts';
import {bassPrompts} from '../../../../source/ui/walk/bass/bass.ts';
import {blendInputs} from '../../../afresh.ts';
import {type Boxes, roomProfile, type Truth, takeReading} from '../../../study/calibration/blend/room.ts';

/** An invented room with one front speaker, whose sub arrives 4.3 ms late with the settings that stand. */
export const truth: Truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 60,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 14.3},
	levelDb: () => 75,
};
export const standing = {
	id: 'now',
	name: 'Now',
	origin: 'solved' as const,
	channels: {FC: {delayMs: {stepped: 10}, crossoverHertz: 80}, LFE1: {delayMs: {stepped: 8}}},
};
export const boxes: Boxes = {delayMs: {FC: 10, sub1: 8}};

export function bassProfile(changes: Partial<Profile> = {}): Profile {
	return roomProfile(truth, {
		settings: [standing],
		kit: {meterWeighting: 'Z'},
		// The tape knows of 2 ms between them and not of the rest.
		tape: [
			{from: 'FC', to: 'sofa', metres: 2.746},
			{from: 'sub1', to: 'sofa', metres: 3.432},
		],
		...changes,
	});
}

/** Answers questions of the stop as a meter in that room would, until none is open or `most` were answered. */
export function answered(profile: Profile, most = Number.POSITIVE_INFINITY, softerDb = 0): Profile {
	let now = profile;
	for (let count = 0; count < Math.min(most, 60); count++) {
		const prompt = bassPrompts(now).find(({isAnswered}) => !isAnswered);
		if (!prompt) break;
		const text = prompt.kind === 'choice' ? '1' : levelFor(now, prompt.id, softerDb).toFixed(2);
		const taken = prompt.take(now, text, {takenAt: '2026-04-18T10:00:00Z'});
		if (taken.kind !== 'taken')
			throw new Error(`${prompt.id} did not take ${text}: ${JSON.stringify(taken)}`);
		now = taken.next;
	}

	return now;
}

/** @param softerDb - Taken off what is read after a change, as if it had harmed. */
function levelFor(profile: Profile, id: string, softerDb: number): number {
	const steps = blend(blendInputs(profile)).blocks.flatMap(block => block.steps);
	const step = steps.find(each => `bass:${each.id}` === id)!;
	return takeReading(truth, boxes, step, step.part === 'after' ? -softerDb : 0).decibels;
}
