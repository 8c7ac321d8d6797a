import type {Profile} from '../types.ts';
import {standingSettings} from './settings.ts';

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

It tells changes apart, not forgeries: two 32-bit hashes of every value with its key, the entries of an object added up so that their order
does not count.
Notes, times, names, the state of the walk, readings that no setting is computed from and settings that no reading
refers to do not count.

@returns Sixteen hexadecimal digits.
*/
export function inputsHash(profile: Profile): string {
	const referred = new Set<string>();
	// Readings of the proof and those set aside enter no setting.
	const meter = (profile.meter ?? []).filter(({round, setAside}) => round === 'first' && !setAside);
	for (const {inForce} of meter) if (typeof inForce === 'string') referred.add(inForce);
	const {room, air, screen, lengthUnit, seats, channels, subs, receiver, bassProcessor} = profile;
	const {kit, target} = profile;
	const tape = (profile.tape ?? []).filter(({setAside}) => !setAside);
	const inputs = {
		...{
			room,
			air,
			screen,
			lengthUnit,
			seats,
			channels,
			subs,
			receiver,
			bassProcessor,
			kit,
			target,
			tape,
			meter,
		},
		settings: (profile.settings ?? []).filter(({id}) => referred.has(id)),
	};
	return [0x811c9dc5, 0x9747b28c]
		.map(seed => hashOf(inputs, seed, new Map()).toString(16).padStart(8, '0'))
		.join('');
}

/** Whether the decided settings were computed from other readings or gear than the profile holds now. */
export function isStale(profile: Profile): boolean {
	const hash = standingSettings(profile)?.inputsHash;
	return hash !== undefined && hash !== inputsHash(profile);
}

function hashOf(value: unknown, seed: number, keySeeds: Map<string, number>): number {
	if (typeof value === 'number') return ofText(String(value), seed);
	if (typeof value === 'string') return ofText(value, seed ^ 0x22);
	if (Array.isArray(value)) {
		let hash = seed ^ 0x5b;
		for (const entry of value) hash = mixed(Math.imul(hash, 31) + hashOf(entry, seed, keySeeds));
		return hash >>> 0;
	}

	if (typeof value !== 'object' || value === null) return ofText(String(value), seed ^ 0x6e);
	let sum = seed ^ 0x7b;
	for (const key in value) {
		const entry = (value as Record<string, unknown>)[key];
		if (entry === undefined || ignoredKeys.has(key)) continue;
		let keySeed = keySeeds.get(key);
		if (keySeed === undefined) {
			keySeed = ofText(key, seed ^ 0x3a);
			keySeeds.set(key, keySeed);
		}

		sum = (sum + hashOf(entry, keySeed, keySeeds)) | 0;
	}

	return mixed(sum);
}

/** FNV-1a with the seed in place of its usual offset. */
function ofText(text: string, seed: number): number {
	let hash = seed;
	for (let index = 0; index < text.length; index++)
		hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
	return mixed(hash);
}

/** Spreads every bit over all others. @see Appleby's MurmurHash3, finalisation mix. */
function mixed(half: number): number {
	let value = half ^ (half >>> 16);
	value = Math.imul(value, 0x85ebca6b);
	value ^= value >>> 13;
	value = Math.imul(value, 0xc2b2ae35);
	return (value ^ (value >>> 16)) >>> 0;
}
