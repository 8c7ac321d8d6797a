import {newProfile} from '../../../../source/profile/generic/newProfile.ts';
import {genericReceiverNames, genericReceivers} from '../../../../source/profile/generic/receivers.ts';
import type {Profile} from '../../../../source/profile/types.ts';
import type {PlayedRound} from '../../../../source/study/hearing/round.ts';
import {phone, recorded} from './hear.ts';
import {wave16} from './play.ts';
import {randomFrom} from './room.ts';
import {distanceOf, type Setup} from './setup.ts';

/** Two front speakers and a sub in the simulated room, taped, with delays that distances ask for. */
export function eveningProfile(changes: Partial<Profile> = {}): Profile {
	const receiver = genericReceiverNames.find(name => genericReceivers[name].timing.kind === 'delay')!;
	const bare = newProfile({name: 'Cellar', date: '2026-04-18', layout: '5.1', lengthUnit: 'm', receiver});
	const seat = bare.seats[0]!.id;
	const sub = bare.subs![0]!;
	const tape = [
		['FL', distanceOf('FL')],
		['FR', distanceOf('FR')],
		['LS', distanceOf('SiL')],
		['RS', distanceOf('SiR')],
		['FC', distanceOf('FC')],
		[sub.id, distanceOf('sub1')],
	] as const;
	const alike = {delayMs: {stepped: 0}, trimDb: {stepped: 0}, crossoverHertz: 80};
	return {
		...bare,
		receiver: {...bare.receiver!, invertsSubs: true},
		tape: tape.map(([from, metres]) => ({from, to: seat, metres: Math.round(metres * 1000) / 1000})),
		settings: [
			{
				id: 'now',
				name: 'As it stands',
				origin: 'solved',
				channels: Object.fromEntries(bare.channels.map(({id}) => [id, {...alike}])),
			},
		],
		...changes,
	};
}

/** A door that slams while the main sweep of a channel is played. */
export type Slam = {readonly playing: number; readonly channel: string};

/** Recordings of playings one after the other, in one file as a recorder that runs through makes it. */
export function eveningWave(setups: readonly Setup[], slam?: Slam): Uint8Array {
	const parts = setups.map((setup, index) => {
		const {samples, round} = recorded(setup, {...phone, gain: 0.05, seed: index + 1});
		if (slam?.playing === index) slamIn(samples, round, slam.channel);
		return samples;
	});
	const whole = new Float64Array(parts.reduce((sum, {length}) => sum + length, 0));
	let at = 0;
	for (const part of parts) {
		whole.set(part, at);
		at += part.length;
	}

	return wave16(whole, phone.rateHz);
}

/** Noise that begins at once, 20 dB above the sweep, and dies away within a tenth of a second. */
function slamIn(samples: Float64Array, round: PlayedRound, channel: string): void {
	const sweep = round.sweeps.find(each => each.channel === channel && each.pass === 'main')!;
	const start = Math.round((phone.before! + sweep.atSeconds + 0.6 * sweep.law.seconds) * phone.rateHz);
	let peak = 0;
	for (const value of samples) peak = Math.max(peak, Math.abs(value));
	const random = randomFrom(9);
	for (let index = 0; index < 0.4 * phone.rateHz; index += 1)
		samples[start + index] =
			samples[start + index]! + 10 * peak * Math.exp(-index / 3000) * (2 * random() - 1);
}
