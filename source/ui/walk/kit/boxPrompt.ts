import type {Profile} from '../../../profile/types.ts';
import {readNumber} from '../../../profile/units/number.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';

/** Box of a speaker or sub as its data sheet tells; the Q is of a closed one. */
export type Box = {readonly box?: 'closed' | 'vented' | undefined; readonly totalQ?: number | undefined};

/** Closed or vented; the Q of a closed box may follow its number, so that it costs no question of its own. */
export function boxPrompt(
	asked: {readonly id: string; readonly name: string; readonly now: Box},
	put: (subject: Profile, box: Box) => Profile,
): Prompt<Profile> {
	const {id, name, now} = asked;
	const withQ = now.box === 'closed' && now.totalQ !== undefined ? `Closed, Q ${now.totalQ}` : undefined;
	const prompt = choicePrompt<Profile>({
		id,
		stop: 'kit',
		question: `${name}: closed or vented?`,
		about: 'A vented box has a hole or tube, in front or behind. A closed one’s Q may follow: 1 0.6.',
		explain:
			'A closed box fades out gently below its limit, a vented one steeply. Q tells how; 0.71 where not told.',
		chosen: withQ || !now.box ? undefined : now.box === 'closed' ? 0 : 1,
		other: withQ,
		offers: [
			{label: 'Closed', put: subject => put(subject, {box: 'closed', totalQ: undefined})},
			{label: 'Vented', put: subject => put(subject, {box: 'vented', totalQ: undefined})},
		],
	});
	return {
		...prompt,
		take(subject, text, taking) {
			const typedQ = /^\s*(?:1|closed,?)\s+(?:q\s*=?\s*)?(\S+)\s*$/i.exec(text)?.[1];
			if (typedQ === undefined) return prompt.take(subject, text, taking);
			const reading = readNumber(typedQ, {minimum: 0.2, maximum: 3});
			if (reading.kind === 'no') return reading;
			const next = put(subject, {box: 'closed', totalQ: reading.value});
			return {kind: 'taken', next, readAs: `Closed, Q ${reading.readAs}`};
		},
	};
}
