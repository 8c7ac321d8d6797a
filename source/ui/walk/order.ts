import {isLfe} from '../../profile/channels.ts';
import type {ChannelId, Profile} from '../../profile/types.ts';

/** Once round the room, clockwise from the front left, at ear height; then once round overhead. */
const round: readonly ChannelId[] = [
	'FLw',
	'FL',
	'FLc',
	'FC',
	'BtFL',
	'BtFC',
	'BtFR',
	'FRc',
	'FR',
	'FRw',
	'SiR',
	'RS',
	'RSd',
	'BR',
	'BC',
	'BL',
	'LSd',
	'LS',
	'SiL',
	'TpFL',
	'TpFC',
	'TpFR',
	'TpSiR',
	'TpRS',
	'TpBR',
	'TpBC',
	'TpBL',
	'TpLS',
	'TpSiL',
	'TpC',
];

/** Speakers in the order that saves steps with the tape: once round the room, then overhead. LFE channels are left out. */
export function walkingOrder(profile: Profile): ChannelId[] {
	const speakers = profile.channels.map(({id}) => id).filter(id => !isLfe(id));
	return speakers.toSorted((a, b) => round.indexOf(a) - round.indexOf(b));
}

const sides: ReadonlyArray<readonly [ChannelId, ChannelId]> = [
	['FL', 'FR'],
	['FLw', 'FRw'],
	['FLc', 'FRc'],
	['LS', 'RS'],
	['LSd', 'RSd'],
	['SiL', 'SiR'],
	['BL', 'BR'],
	['TpFL', 'TpFR'],
	['TpSiL', 'TpSiR'],
	['TpLS', 'TpRS'],
	['TpBL', 'TpBR'],
	['BtFL', 'BtFR'],
];

/** Speakers by pairs of the same make, as data sheets are typed in: left with right, the rest alone. */
export function speakerPairs(profile: Profile): ChannelId[][] {
	const left = walkingOrder(profile);
	const pairs: ChannelId[][] = [];
	while (left.length > 0) {
		const id = left.shift()!;
		const pair = sides.find(both => both.includes(id));
		const mate = pair?.find(other => other !== id && left.includes(other));
		if (mate) left.splice(left.indexOf(mate), 1);
		pairs.push(mate ? pair!.filter(side => side === id || side === mate) : [id]);
	}

	return pairs;
}
