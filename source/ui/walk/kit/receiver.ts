import {
	type GenericReceiver,
	genericReceiverNames,
	genericReceivers,
} from '../../../profile/generic/receivers.ts';
import type {Profile, Receiver} from '../../../profile/types.ts';
import {formatLength, type LengthChoice, readLength} from '../../../profile/units/length.ts';
import {readNumber} from '../../../profile/units/number.ts';
import {formatTime, readTime} from '../../../profile/units/time.ts';
import {lengthUnitOf, unitWords} from '../lengthUnits.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt, valuePrompt} from '../prompt/single.ts';
import {crossoverPrompts} from './crossovers.ts';
import {levelPrompts} from './levelSteps.ts';
import {withReceiver} from './receiverChange.ts';

/** What the receiver can take: first a kind that stands for many, then each step and limit, free to correct. */
export function receiverPrompts(profile: Profile): Prompt<Profile>[] {
	const {receiver} = profile;
	return [
		kindPrompt(receiver),
		...(receiver
			? [
					...timingPrompts(profile, receiver),
					...levelPrompts('kit:trim', 'Trim', receiver.trim, (subject, trim) =>
						withReceiver(subject, {trim: {...subject.receiver!.trim, ...trim}}),
					),
					...crossoverPrompts(receiver),
				]
			: []),
	];
}

/** A copy of a ready-made receiver that may be edited. */
export function receiverCopy(name: GenericReceiver): Receiver {
	return structuredClone(genericReceivers[name]) as Receiver;
}

function kindPrompt(receiver: Receiver | undefined): Prompt<Profile> {
	const chosen = genericReceiverNames.findIndex(name => genericReceivers[name].name === receiver?.name);
	return choicePrompt<Profile>({
		id: 'kit:receiver',
		stop: 'kit',
		question: 'How does the receiver take distances?',
		about: 'Look at its menu for distances or delays: what is the smallest change?',
		explain: 'The nearest kind is enough; its steps and limits can be corrected in the questions after this.',
		chosen: chosen < 0 ? undefined : chosen,
		other: receiver && (receiver.name ?? 'described by hand'),
		offers: genericReceiverNames.map(name => ({
			label: genericReceivers[name].name,
			hint: `trims of ${genericReceivers[name].trim.stepDb} dB`,
			put: subject => ({...subject, receiver: receiverCopy(name)}),
		})),
	});
}

function timingPrompts(profile: Profile, {timing}: Receiver): Prompt<Profile>[] {
	if (timing.kind === 'delay') {
		const fields = [
			['stepMs', 'Smallest change of the delay'],
			['maximumMs', 'Longest delay it takes'],
		] as const;
		return fields.map(([field, question]) =>
			valuePrompt<Profile, {milliseconds: number; readAs: string}>({
				id: `kit:timing:${field}`,
				stop: 'kit',
				question,
				explain: 'As the receiver’s menu steps and ends.',
				unit: 'ms',
				shown: formatTime(timing[field]),
				read(text) {
					const reading = readTime(text);
					const isFine = reading.kind !== 'ok' || (reading.milliseconds > 0 && reading.milliseconds <= 1000);
					return isFine ? reading : {kind: 'no', why: 'More than 0 and at most 1000 ms.'};
				},
				put: (subject, {milliseconds}) => withReceiver(subject, {timing: {...timing, [field]: milliseconds}}),
			}),
		);
	}

	const unit = lengthUnitOf(profile);
	const fields = [
		['stepMetres', 'Smallest change of the distance'],
		['maximumMetres', 'Longest distance it takes'],
	] as const;
	return [
		...fields.map(([field, question]) =>
			valuePrompt<Profile, LengthChoice>({
				id: `kit:timing:${field}`,
				stop: 'kit',
				question,
				about: 'A tenth of a foot is 0.1ft.',
				explain: 'As the receiver’s menu steps and ends.',
				unit: unitWords[unit],
				shown: formatLength(timing[field], timing.shownIn === 'in' ? 'ft-in' : timing.shownIn),
				read(text) {
					const reading = readLength(text, unit);
					const isFine =
						reading.kind !== 'ok' || (reading.metres > 0 && (field !== 'stepMetres' || reading.metres <= 10));
					return isFine ? reading : {kind: 'no', why: 'More than nothing; a step is at most 10 m.'};
				},
				put: (subject, {metres}) => withReceiver(subject, {timing: {...timing, [field]: metres}}),
			}),
		),
		valuePrompt<Profile, {value: number; readAs: string}>({
			id: 'kit:timing:speed',
			stop: 'kit',
			question: 'The receiver’s own speed of sound',
			about: 'Only where its manual tells. 343 m/s is taken otherwise.',
			explain: 'It turns distances into delays with a constant of its own, whatever the air in the room.',
			unit: 'm/s',
			shown:
				timing.speedOfSoundMetresPerSecond === undefined
					? undefined
					: `${timing.speedOfSoundMetresPerSecond} m/s`,
			read: text => readNumber(text, {minimum: 250, maximum: 450, unit: 'm/s'}),
			put: (subject, {value}) =>
				withReceiver(subject, {timing: {...timing, speedOfSoundMetresPerSecond: value}}),
		}),
	];
}
