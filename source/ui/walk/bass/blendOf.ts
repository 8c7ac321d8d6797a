import type {MeterReading, Profile} from '../../../profile/types.ts';
import {blend} from '../../../study/calibration/blend/blend.ts';
import {blendInputs} from '../../../study/calibration/blend/blendInputs.ts';
import type {BlendResult} from '../../../study/calibration/blend/blendResult.ts';
import {derived} from '../../derived.ts';
import {costlyParts} from '../costlyParts.ts';

/** Noise of one speaker or sub alone enters no blend. */
function isForBlend({signal, source}: MeterReading): boolean {
	return signal?.kind === 'tone' || source === 'background' || Array.isArray(source);
}

/** The blend of a profile and the readings it wants; computed anew only when something that it looks at changes. */
export const blendOf: (profile: Profile) => BlendResult = derived(
	{
		format: ({format}: Profile) => format,
		name: ({name}: Profile) => name,
		date: ({date}: Profile) => date,
		room: ({room}: Profile) => room,
		air: ({air}: Profile) => air,
		seats: ({seats}: Profile) => seats,
		channels: ({channels}: Profile) => channels,
		subs: ({subs}: Profile) => subs,
		receiver: ({receiver}: Profile) => receiver,
		bassProcessor: ({bassProcessor}: Profile) => bassProcessor,
		kit: ({kit}: Profile) => kit,
		tape: ({tape}: Profile) => tape,
		settings: ({settings}: Profile) => settings,
		recordings: ({recordings}: Profile) => recordings,
		responses: ({responses}: Profile) => responses,
		meter: ({meter}: Profile) => (meter ?? []).filter(isForBlend),
		toneSet: ({walk}: Profile) => walk?.toneSet,
		blendWay: ({walk}: Profile) => walk?.blendWay,
		costly: costlyParts,
	},
	({toneSet, blendWay, costly, ...parts}) =>
		blend(blendInputs({...parts, walk: {toneSet, blendWay}}, costly)),
);
