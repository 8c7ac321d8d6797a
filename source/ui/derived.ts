import type {Profile} from '../profile/types.ts';

/** How many values of one computation are kept: of the profile on screen, the one before it, and one for undo. */
const mostKept = 3;

type Entry<Inputs, Value> = {readonly profile: Profile; readonly inputs: Inputs; readonly value: Value};

/**
Something computed from parts of the profile, and computed again only when one of those parts changed.

It is the one memory of the app: nothing below it remembers. What `compute` gets is an object of the declared inputs and
nothing else, so that an input that was not declared does not compile. Inputs may be derived themselves; a chain of them
costs no more than comparing. The last three values are kept, so that neither a key that only moves nor an undo computes
anything.

Inputs count as the same where they are the same value or lists of the same entries in the same order: a list may be
filtered or mapped to parts afresh at each call.

@param inputs - By name, how to get each input from the profile. No more than picking and filtering belongs here.
@param compute - Pure. What it throws is passed on and not kept.
@returns A function of the profile.

@example
const networkOf = derived({tape: p => p.tape, seats: p => p.seats}, ({tape, seats}) => adjust(tape, seats));
const settingsOf = derived({network: networkOf, meter: p => p.meter}, parts => solve(parts));
*/
export function derived<Inputs extends object, Value>(
	inputs: {readonly [Name in keyof Inputs]: (profile: Profile) => Inputs[Name]},
	compute: (inputs: Inputs) => Value,
): (profile: Profile) => Value {
	const names = Object.keys(inputs) as Array<keyof Inputs>;
	const kept: Array<Entry<Inputs, Value>> = [];
	return profile => {
		const known = kept.findIndex(entry => entry.profile === profile);
		if (known >= 0) return toFront(kept, known).value;
		const found = {} as Inputs;
		for (const name of names) found[name] = inputs[name](profile);
		const alike = kept.findIndex(entry => names.every(name => isSame(entry.inputs[name], found[name])));
		if (alike >= 0) {
			const entry = {...toFront(kept, alike), profile};
			kept[0] = entry;
			return entry.value;
		}

		const value = compute(found);
		kept.unshift({profile, inputs: found, value});
		kept.length = Math.min(kept.length, mostKept);
		return value;
	};
}

function toFront<T>(entries: T[], index: number): T {
	const [entry] = entries.splice(index, 1);
	entries.unshift(entry!);
	return entry!;
}

function isSame(one: unknown, other: unknown): boolean {
	if (Object.is(one, other)) return true;
	if (!Array.isArray(one) || !Array.isArray(other) || one.length !== other.length) return false;
	return one.every((entry, index) => Object.is(entry, other[index]));
}
