import {referenceSeat} from '../../../profile/ask/seats.ts';
import type {Profile, Seat} from '../../../profile/types.ts';
import {readNumber} from '../../../profile/units/number.ts';
import {walkAnswer, withAnswer} from '../answered.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {textPrompt, valuePrompt} from '../prompt/single.ts';

const mostSeats = 20;

/** How many seats count, and what they are called. */
export function seatPrompts(profile: Profile): Prompt<Profile>[] {
	const reference = referenceSeat(profile);
	return [
		valuePrompt<Profile, {value: number; readAs: string}>({
			id: 'room:seats',
			stop: 'room',
			question: 'How many seats count?',
			about: 'One is the reference seat; the others may be taped and metered later.',
			explain: 'Delays are made for the reference seat. Other seats can share in the levels.',
			shown:
				profile.seats.length === 1 && walkAnswer(profile, 'room:seats') === undefined
					? undefined
					: String(profile.seats.length),
			read(text) {
				const reading = readNumber(text, {minimum: 1, maximum: mostSeats, isWhole: true});
				if (reading.kind !== 'ok' || reading.value >= profile.seats.length) return reading;
				const leaving = profile.seats.slice(reading.value);
				if (leaving.every(seat => seat !== reference && !isUsed(profile, seat))) return reading;
				return {kind: 'no', why: 'A seat with readings, or the reference seat, would be lost.'};
			},
			put: (subject, {value}) => withAnswer(withSeats(subject, value), 'room:seats', String(value)),
		}),
		...profile.seats.map(seat =>
			textPrompt<Profile>({
				id: `room:seatName:${seat.id}`,
				stop: 'room',
				question: `${seat.name}: another name?`,
				about: seat === reference ? 'This is the reference seat.' : undefined,
				explain: 'The name is shown wherever this seat is asked about.',
				shown: seat.name,
				put: (subject, name) => ({
					...subject,
					seats: subject.seats.map(other => (other.id === seat.id ? {...other, name} : other)),
				}),
			}),
		),
	];
}

function isUsed({tape = [], meter = []}: Profile, {id}: Seat): boolean {
	return tape.some(({from, to}) => from === id || to === id) || meter.some(({seat}) => seat === id);
}

function withSeats(profile: Profile, count: number): Profile {
	const seats = profile.seats.slice(0, count);
	for (let number = 1; seats.length < count; number++) {
		const id = `seat${number}`;
		if (!seats.some(seat => seat.id === id)) seats.push({id, name: `Seat ${number}`});
	}

	return {...profile, seats};
}
