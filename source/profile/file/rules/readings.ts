import {channelIds} from '../../channels.ts';
import {planes} from '../../planes.ts';
import type {Profile} from '../../types.ts';
import {nameRemedy} from '../json/nearest.ts';
import type {Found, Path} from '../json/problem.ts';

/** Tape and meter readings and curves that refer to things that the profile does not have. */
export function findReadingProblems(profile: Profile): Found[] {
	const found: Found[] = [];
	const seats = new Set(profile.seats.map(({id}) => id));
	const sources = new Set<string>([...profile.channels, ...(profile.subs ?? [])].map(({id}) => id));
	const ends = new Set<string>([...sources, ...seats, 'screen', ...planes]);
	const known = (path: Path, name: string, names: ReadonlySet<string>, expected: string) => {
		if (names.has(name)) return;
		const isOtherChannel = (channelIds as string[]).includes(name);
		const remedy = isOtherChannel
			? `The channel ${name} is not in this profile. Add it, or correct the name.`
			: nameRemedy(name, names);
		found.push({path, value: name, expected, remedy});
	};

	for (const [index, {from, to}] of (profile.tape ?? []).entries()) {
		known(['tape', index, 'from'], from, ends, 'a channel, sub, seat, screen or plane of this profile');
		known(['tape', index, 'to'], to, ends, 'a channel, sub, seat, screen or plane of this profile');
		if (from === to) {
			found.push({
				path: ['tape', index],
				value: `from ${from} to ${to}`,
				expected: 'two different ends',
				remedy: 'Correct one end.',
			});
		}
	}

	const checkSource = (path: Path, source: string | readonly string[], isBackgroundFine: boolean) => {
		if (typeof source === 'string') {
			if (!(isBackgroundFine && source === 'background'))
				known(path, source, sources, 'a channel or sub of this profile, or background');
			return;
		}

		for (const [index, name] of source.entries()) {
			known([...path, index], name, sources, 'a channel or sub of this profile');
			if (source.indexOf(name) < index)
				found.push({
					path: [...path, index],
					value: name,
					expected: 'each source once',
					remedy: 'Take one of them out.',
				});
		}
	};

	for (const [index, {source, seat, signal}] of (profile.meter ?? []).entries()) {
		checkSource(['meter', index, 'source'], source, true);
		known(['meter', index, 'seat'], seat, seats, 'a seat of this profile');
		if (signal?.kind === 'pink' && signal.fromHertz >= signal.toHertz) {
			found.push({
				path: ['meter', index, 'signal', 'fromHertz'],
				value: signal.fromHertz,
				expected: `less than toHertz, ${signal.toHertz}`,
				remedy: 'Change the two about, or correct one.',
			});
		}
	}

	for (const [index, {source, seat}] of (profile.responses ?? []).entries()) {
		checkSource(['responses', index, 'source'], source, false);
		known(['responses', index, 'seat'], seat, seats, 'a seat of this profile');
	}

	const ids = new Set<string>();
	for (const [index, {id, seat}] of (profile.recordings ?? []).entries()) {
		known(['recordings', index, 'seat'], seat, seats, 'a seat of this profile');
		if (ids.has(id))
			found.push({
				path: ['recordings', index, 'id'],
				value: id,
				expected: 'each recording by an id of its own',
				remedy: 'Rename or take out one of the two.',
			});
		ids.add(id);
	}

	for (const [index, {points}] of (profile.responses ?? []).entries()) {
		if (points && points.levelsDb.length !== points.phasesDegrees.length)
			found.push({
				path: ['responses', index, 'points', 'phasesDegrees'],
				value: `${points.phasesDegrees.length} numbers`,
				expected: `as many as levelsDb, ${points.levelsDb.length}`,
				remedy: 'Take this response out, and hear its recording again.',
			});
	}

	return found;
}
