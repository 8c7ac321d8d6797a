import type {Profile} from '../profile/types.ts';

/** What people write for themselves, and what changes no result. */
const ignoredKeys = new Set([
	'note',
	'takenAt',
	'name',
	'fixed',
	'latencyFrom',
	'dialledIn',
	'decidedAt',
	'inputsHash',
]);

/**
Digest of everything that a solution is computed from, so that a set of settings shows when it has gone stale.

It tells changes apart, not forgeries: 64 bits from two multiplicative hashes over the values in order of their keys.
Notes, times, names, the state of the walk and settings that no reading refers to do not count.

@returns Sixteen hexadecimal digits.
*/
export function inputsHash(profile: Profile): string {
	const referred = new Set<string>();
	for (const {inForce} of profile.meter ?? []) if (typeof inForce === 'string') referred.add(inForce);
	const {air, lengthUnit, seats, channels, subs, receiver, bassProcessor, kit, target, tape, meter} = profile;
	const digest = newDigest();
	feed(digest, {
		...{air, lengthUnit, seats, channels, subs, receiver, bassProcessor, kit, target, tape, meter},
		responses: profile.responses,
		settings: (profile.settings ?? []).filter(({id}) => referred.has(id)),
		room: profile.room,
		screen: profile.screen,
	});
	return digest.end();
}

type Digest = {readonly add: (text: string) => void; readonly end: () => string};

// FNV-1a with its usual prime and offset, beside a second stream with other odd constants.
function newDigest(): Digest {
	let first = 0x811c9dc5;
	let second = 0x9747b28c;
	return {
		add(text) {
			for (let index = 0; index < text.length; index++) {
				const code = text.charCodeAt(index);
				first = Math.imul(first ^ code, 0x01000193);
				second = Math.imul(second ^ code, 0x5bd1e995);
				second ^= second >>> 15;
			}
		},
		end: () => [first, second].map(half => mixed(half).toString(16).padStart(8, '0')).join(''),
	};
}

/** Spreads the last characters over all bits. @see Appleby's MurmurHash3, finalisation mix. */
function mixed(half: number): number {
	let value = half ^ (half >>> 16);
	value = Math.imul(value, 0x85ebca6b);
	value ^= value >>> 13;
	value = Math.imul(value, 0xc2b2ae35);
	return (value ^ (value >>> 16)) >>> 0;
}

function feed(digest: Digest, value: unknown): void {
	if (Array.isArray(value)) {
		digest.add('[');
		for (const entry of value) {
			feed(digest, entry);
			digest.add(',');
		}

		digest.add(']');
	} else if (typeof value === 'object' && value !== null) {
		digest.add('{');
		for (const key of Object.keys(value).sort()) {
			const entry = (value as Record<string, unknown>)[key];
			if (entry === undefined || ignoredKeys.has(key)) continue;
			digest.add(`${JSON.stringify(key)}:`);
			feed(digest, entry);
			digest.add(',');
		}

		digest.add('}');
	} else {
		digest.add(JSON.stringify(value) ?? 'null');
	}
}
