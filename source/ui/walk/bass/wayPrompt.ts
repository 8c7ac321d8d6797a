import type {Profile} from '../../../profile/types.ts';
import {wayCost, wayName, wayOdds} from '../../../report/said/blend.ts';
import type {OfferedWay} from '../../../study/calibration/blend/ways.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';

/** Asks which way to go, with what each takes and what it did in simulated rooms. */
export function wayPrompt(profile: Profile, ways: readonly OfferedWay[]): Prompt<Profile> {
	const at = ways.findIndex(({way}) => way === profile.walk?.blendWay);
	return choicePrompt<Profile>({
		id: 'bass:way',
		stop: 'bass',
		question: 'Which way',
		about: 'Each ends with noise before and after: what is not louder is put back.',
		explain: ways.map(way => `${wayName(way)}: ${wayOdds(way)}`).join(' '),
		chosen: at < 0 ? undefined : at,
		usual: 0,
		offers: ways.map(way => ({
			label: wayName(way),
			// Short, so that it stays whole on the narrow line of a choice.
			hint: wayCost(way).replace(' at a box', ''),
			put: subject => ({...subject, walk: {...subject.walk, blendWay: way.way}}),
		})),
	});
}
