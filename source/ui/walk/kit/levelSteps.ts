import type {Profile, Receiver} from '../../../profile/types.ts';
import {readNumber} from '../../../profile/units/number.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {valuePrompt} from '../prompt/single.ts';

type Levels = Receiver['trim'];

/** Step and limits of a level control. */
export function levelPrompts(
	id: string,
	name: string,
	levels: Levels,
	put: (subject: Profile, change: Partial<Levels>) => Profile,
): Prompt<Profile>[] {
	const fields = [
		['stepDb', 'smallest change', 0.01, 20],
		['minimumDb', 'lowest', -100, 0],
		['maximumDb', 'highest', 0, 100],
	] as const;
	return fields.map(([field, words, minimum, maximum]) =>
		valuePrompt<Profile, {value: number; readAs: string}>({
			id: `${id}:${field}`,
			stop: 'kit',
			question: `${name}: ${words}`,
			explain: 'As its menu steps and ends, with the sign.',
			unit: 'dB',
			shown: `${levels[field]} dB`.replace('-', '−'),
			read: text => readNumber(text, {minimum, maximum, unit: 'dB'}),
			put: (subject, {value}) => put(subject, {[field]: value}),
		}),
	);
}
