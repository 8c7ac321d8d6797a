import type {Profile} from '../types.ts';
import {lengthUnits} from '../units/lengthUnit.ts';
import {recordedReadings} from './recordedReadings.ts';
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

/** Digests made today begin with it; those without are of the time when the display unit counted. */
const digestVersion = '2:';

/**
Digest of everything that a solution is computed from, so that a set of settings shows when it has gone stale.

It tells changes apart, not forgeries: two 32-bit hashes of every value with its key, the entries of an object added up so that their order
does not count.
Notes, times, names, the display unit, the state of the walk, readings that no setting is computed from and settings that
no reading refers to do not count.

@returns `2:` and sixteen hexadecimal digits.
*/
export function inputsHash(profile: Profile): string {
	return digestVersion + digestOf(inputsOf(profile));
}

/**
Whether a set was computed from what the profile holds now. One kept under the older digest fits where that fits in any
unit that lengths can be shown in: no result ever should have depended on it.

@param hash - As stored with the set; a set without one was not computed here and fits anything.
*/
export function isComputedFrom(profile: Profile, hash: string | undefined): boolean {
	if (hash === undefined) return true;
	if (hash.startsWith(digestVersion)) return hash === inputsHash(profile);
	const inputs = inputsOf(profile);
	return [profile.lengthUnit, undefined, ...lengthUnits].some(
		lengthUnit => hash === digestOf({...inputs, lengthUnit}),
	);
}

/** Whether the decided settings were computed from other readings or gear than the profile holds now. */
export function isStale(profile: Profile): boolean {
	const set = standingSettings(profile);
	if (isComputedFrom(profile, set?.inputsHash)) return false;
	// What was recorded with these settings checks them: it outdates them only where it asks for others.
	const recordings = (profile.recordings ?? []).filter(
		({inForce, blend}) =>
			inForce !== set?.id || blend?.groups.some(({addedMs, isTurned}) => addedMs !== 0 || isTurned) === true,
	);
	return (
		recordings.length === (profile.recordings ?? []).length ||
		!isComputedFrom({...profile, recordings}, set?.inputsHash)
	);
}

function inputsOf(profile: Profile) {
	const referred = new Set<string>();
	// Readings of the proof and those set aside enter no setting.
	const meter = (profile.meter ?? []).filter(({round, setAside}) => round === 'first' && !setAside);
	for (const {inForce} of meter) if (typeof inForce === 'string') referred.add(inForce);
	// Of recordings only the blend that was found from them enters settings, never their points.
	const blends = (profile.recordings ?? []).flatMap(({blend, inForce, setAside}) =>
		blend && !setAside ? [{blend, inForce}] : [],
	);
	// And when each line's first sound came.
	const arrivals = heardArrivalsOf(profile);
	const recorded = recordedReadings(profile);
	for (const {inForce} of [...blends, ...arrivals]) if (typeof inForce === 'string') referred.add(inForce);
	const {room, air, screen, seats, channels, subs, receiver, bassProcessor, target} = profile;
	const tape = (profile.tape ?? []).filter(({setAside}) => !setAside);
	const settings = (profile.settings ?? []).filter(({id}) => referred.has(id));
	return {
		...{room, air, screen, seats, channels, subs, receiver, bassProcessor, target},
		kit: meteringKit(profile.kit),
		...{tape, meter, settings},
		blends: blends.length > 0 ? blends : undefined,
		arrivals: arrivals.length > 0 ? arrivals : undefined,
		// Levels that follow from a recording and a reading.
		recorded: recorded.length > 0 ? recorded : undefined,
	};
}

/** What the newest recording as it stands tells of arrivals at each seat. */
function heardArrivalsOf({recordings = [], responses = []}: Profile) {
	const newest = new Map(
		recordings.filter(({setAside, state}) => !setAside && !state).map(each => [each.seat, each] as const),
	);
	return [...newest.values()].map(({id, seat, inForce}) => ({
		seat,
		inForce,
		lines: responses
			.filter(({recording, setAside, arrivalMs}) => recording === id && !setAside && arrivalMs !== undefined)
			.map(({source, arrivalMs, arrivalSigmaMs, laterMs}) => [source, arrivalMs, arrivalSigmaMs, laterMs]),
	}));
}

/** Wire is bought by its system, and nothing dialled in by it: a kit that tells no more counts as none. */
function meteringKit(kit: Profile['kit']): object | undefined {
	if (kit?.wireSystem === undefined) return kit;
	const {wireSystem: _, ...rest} = kit;
	return Object.keys(rest).length > 0 ? rest : undefined;
}

function digestOf(inputs: object): string {
	return [0x811c9dc5, 0x9747b28c]
		.map(seed => hashOf(inputs, seed, new Map()).toString(16).padStart(8, '0'))
		.join('');
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
