import type {MeterReading, Profile} from '../../../profile/types.ts';
import {type BlendResult, blend} from '../../../study/calibration/blend/blend.ts';
import {blendProcedure} from '../../../study/calibration/blend/procedure.ts';
import type {BlendStep} from '../../../study/calibration/blend/steps.ts';

/** Everything of the blend that the stop shows. */
export type Blended = {readonly result: BlendResult; readonly steps: readonly BlendStep[]};

type Known = {readonly profile: Profile; readonly read: readonly MeterReading[]; readonly blended: Blended};

/** What the blend looks at besides tones and background. */
const parts = [
	'channels',
	'subs',
	'receiver',
	'bassProcessor',
	'kit',
	'settings',
	'seats',
	'room',
	'target',
] as const;
/** The profile on screen and the one before it. */
const mostRemembered = 2;
let known: readonly Known[] = [];

/** The blend of a profile and the readings it wants; computed anew only when something that it looks at changes. */
export function blendOf(profile: Profile): Blended {
	const read = (profile.meter ?? []).filter(
		({signal, source}) => signal?.kind === 'tone' || source === 'background',
	);
	const found = known.find(
		entry =>
			parts.every(part => entry.profile[part] === profile[part]) &&
			entry.read.length === read.length &&
			entry.read.every((reading, index) => reading === read[index]),
	);
	if (found) return found.blended;
	const blended = {result: blend(profile), steps: blendProcedure(profile).steps};
	known = [{profile, read, blended}, ...known].slice(0, mostRemembered);
	return blended;
}
