import type {Profile} from '../../../profile/types.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {textPrompt, valuePrompt} from '../prompt/single.ts';
import type {Reading} from '../prompt/taken.ts';
import {mainsCaution, outletsOf} from './outlets.ts';

type Load = NonNullable<NonNullable<Profile['wiring']>['loads']>[number];
type LoadReading = {readonly watts: number; readonly outlet?: number; readonly readAs: string};

const mostWatts = 100_000;
const mostLoads = 500;
const longestName = 120;

const loadsOf = (profile: Profile): readonly Load[] => profile.wiring?.loads ?? [];

/** What hangs on the outlets: the boxes of the profile, whatever else was entered, and one more. Nothing before there is an outlet. */
export function loadPrompts(profile: Profile): Prompt<Profile>[] {
	if (outletsOf(profile).length === 0) return [];
	const loads = loadsOf(profile);
	const boxes = [
		{key: 'receiver', name: 'Receiver'},
		...(profile.bassProcessor ? [{key: 'processor', name: 'Bass processor'}] : []),
		...(profile.subs ?? []).map(({id, name}) => ({key: `sub:${id}`, name})),
	].filter(({name}, index, all) => all.findIndex(other => other.name === name) === index);
	const others = [...new Set(loads.map(({name}) => name))].filter(name =>
		boxes.every(box => box.name !== name),
	);
	return [
		...boxes.map(({key, name}) => wattsPrompt(profile, `wiring:load:${key}`, name)),
		...others.map((name, index) => wattsPrompt(profile, `wiring:otherLoad:${index + 1}`, name)),
		...(loads.length < mostLoads ? [morePrompt(profile, others.length)] : []),
	];
}

function wattsPrompt(profile: Profile, id: string, name: string): Prompt<Profile> {
	const outlets = outletsOf(profile);
	const load = loadsOf(profile).find(other => other.name === name);
	const outlet = outlets.find(other => other.id === load?.on);
	const numbered = outlets.map((other, index) => `${index + 1} ${other.name}`).join(', ');
	return valuePrompt<Profile, LoadReading>({
		id,
		stop: 'wiring',
		question: `${name}: watts, and where plugged in?`,
		about:
			outlets.length > 1
				? `From the plate at its back, then the number of the outlet: 300 on 2. ${numbered}.`
				: `From the plate at its back. It hangs on ${numbered.slice(2)}.`,
		explain: 'The largest power drawn for minutes; what is printed is on the safe side.',
		caution: mainsCaution,
		unit: 'W',
		shown: load && `${load.watts} W${outlet ? ` on ${outlet.name}` : ''}`,
		read: text => readLoad(text, outlets.length),
		put: (subject, reading) => withLoad(subject, name, reading),
	});
}

function morePrompt(profile: Profile, others: number): Prompt<Profile> {
	const outlets = outletsOf(profile).length;
	const prompt = textPrompt<Profile>({
		id: `wiring:otherLoad:${others + 1}`,
		stop: 'wiring',
		question: 'Anything else plugged in there?',
		about: outlets > 1 ? 'Name, watts, outlet: Display 180 on 1.' : 'Name and watts: Display 180.',
		explain: 'Whatever shares a strip or circuit with the receiver counts.',
		caution: mainsCaution,
		shown: undefined,
		put: subject => subject,
	});
	return {
		...prompt,
		isAnswered: others > 0,
		take(subject, text) {
			const [, name, rest] =
				/^(.*?\p{L}\S*)\s+(\d+(?:[.,]\d+)?\s*w?(?:\s+(?:on\s+)?\d+)?)$/iu.exec(text.trim()) ?? [];
			if (name === undefined || rest === undefined)
				return {kind: 'no', why: 'A name, then its watts: Display 180.'};
			const reading = readLoad(rest, outletsOf(subject).length);
			if (reading.kind !== 'ok')
				return {kind: 'no', why: reading.kind === 'no' ? reading.why : reading.question};
			const next = withLoad(subject, name.slice(0, longestName), reading);
			return {kind: 'taken', next, readAs: `${name}, ${reading.readAs}`};
		},
	};
}

/** Reads watts and, after them, the number of an outlet from 1: `300`, `300 W`, `300 on 2`. */
export function readLoad(text: string, outlets: number): Reading<LoadReading> {
	const [, digits, number] = /^(\d+(?:[.,]\d+)?)\s*w?(?:\s+(?:on\s+)?(\d+))?$/i.exec(text.trim()) ?? [];
	if (digits === undefined)
		return {kind: 'no', why: 'Watts, then the number of the outlet: 300 or 300 on 2.'};
	const watts = Number(digits.replace(',', '.'));
	if (watts > mostWatts) return {kind: 'no', why: `At most ${mostWatts} W.`};
	if (number === undefined) return {kind: 'ok', watts, readAs: `${watts} W`};
	const outlet = Number(number);
	if (outlet < 1 || outlet > outlets)
		return {kind: 'no', why: `There is no outlet ${outlet}; they are numbered 1 to ${outlets}.`};
	return {kind: 'ok', watts, outlet, readAs: `${watts} W on outlet ${outlet}`};
}

function withLoad(profile: Profile, name: string, {watts, outlet}: LoadReading): Profile {
	const outlets = outletsOf(profile);
	const loads = loadsOf(profile);
	const old = loads.find(load => load.name === name);
	const chosen = outlet === undefined ? undefined : outlets[outlet - 1];
	const on = chosen?.id ?? old?.on ?? outlets[0]!.id;
	const next: Load = {...old, name, on, watts};
	return {
		...profile,
		wiring: {
			...profile.wiring,
			loads: old ? loads.map(load => (load === old ? next : load)) : [...loads, next],
		},
	};
}
