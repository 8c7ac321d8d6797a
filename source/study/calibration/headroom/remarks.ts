import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import type {Remark} from '../result.ts';
import {inDb} from '../words.ts';
import type {HeadroomResult, SourceHeadroom} from './headroom.ts';

/** What a headroom figure leaves out, and what it lacks. */
export function headroomRemarks(
	profile: Profile,
	sources: readonly SourceHeadroom[],
	first: HeadroomResult['first'],
	redirected: number,
): Remark[] {
	const remarks: Remark[] = [];
	for (const {source, missing} of sources) {
		if (missing.length === 0) continue;
		remarks.push({
			kind: 'advice',
			code: 'headroom-unknown',
			about: source,
			text: `${source === 'subs' ? 'Subs' : source}: headroom not told at every seat, ${missing.join(', ')} missing. Enter it under ${missing.some(word => word.startsWith('distance')) ? 'Kit or Tape' : 'Kit'}.`,
		});
	}

	const unstated = profile.channels.filter(
		({speaker}) => speaker?.sensitivityDb !== undefined && speaker.sensitivityFor === undefined,
	);
	if (unstated.length > 0) {
		remarks.push({
			kind: 'doubt',
			code: 'sensitivity-kind-unknown',
			text: `${unstated.map(({id}) => id).join(', ')}: sensitivity taken as for 2.83 V. If it is for 1 W, a 4 ohm speaker reaches 3 dB more than shown.`,
		});
	}

	if (!first) {
		remarks.push({
			kind: 'problem',
			code: 'headroom-nothing-known',
			text: 'Headroom: no channel has sensitivity, amplifier power and distance. Enter them for one channel at least.',
		});
		return remarks;
	}

	const who = first.source === 'subs' ? 'The subs give' : `${first.source} gives`;
	remarks.push(
		first.masterVolumeDb < 0
			? {
					kind: 'advice',
					code: 'first-to-give-out',
					about: first.source,
					text: `${who} out first at ${nameOf(profile, first.seat)}: full-scale peaks stay clean up to a master volume of ${inDb(first.masterVolumeDb, 0)}. Stay below it, sit nearer, or give it more power.`,
				}
			: {
					kind: 'note',
					code: 'first-to-give-out',
					about: first.source,
					text: `${who} out first at ${nameOf(profile, first.seat)}, only at a master volume of +${inDb(first.masterVolumeDb, 0)}: reference gain is within reach.`,
				},
		{
			kind: 'note',
			code: 'sensitivity-assumes',
			text: 'Sensitivity is a mean over a band, one speaker in the open on its axis, cold. A room falls by less than 6 dB a doubling of distance, so speakers may do better; hot voice coils lose 1 to 3 dB at full power, so they may do worse (common practice, no source). Count on ±3 dB.',
		},
	);
	if (sources.some(({source}) => source === 'subs')) {
		remarks.push({
			kind: 'note',
			code: 'sub-load',
			text: `Subs: LFE${redirected > 0 ? ` and the bass of ${redirected} high-passed channels` : ''}, added on energy. All at full scale and in phase at once would ask for more; programme hardly ever does (common practice, no source).`,
		});
	}

	if (sources.some(({crossoverHertz}) => crossoverHertz === 'full')) {
		remarks.push({
			kind: 'doubt',
			code: 'full-range-excursion',
			text: 'Full-range channels: their cones must do the bass too, which sensitivity and watts do not tell. They may give out earlier than shown.',
		});
	}

	return remarks;
}
