import {isLfe} from '../../../profile/channels.ts';
import type {ChannelId, Profile} from '../../../profile/types.ts';
import type {BlendStep} from '../../../study/calibration/blend/steps.ts';
import {blendFile} from '../../../study/playing/plan.ts';
import {walkAnswer, withAnswer} from '../answered.ts';
import {writesFiles} from '../meter/sound.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';

const soundId = 'bass:sound';

/** Where the tones come from, or the noise: files that are written at once, for the crossovers that stand now, or sounds of one's own. */
export function bassSoundPrompt(profile: Profile, {signal}: BlendStep): Prompt<Profile> {
	const answer = walkAnswer(profile, soundId);
	const kinds = ['files', 'own'];
	const isTone = signal.kind === 'tone';
	const prompt = choicePrompt<Profile>({
		id: soundId,
		stop: 'bass',
		question: `Where ${isTone ? 'do the tones' : 'does the noise'} come from?`,
		about: isTone
			? 'A file holds the tones of one front speaker in a row, 12 s each, as many blips before a tone as its number. Play it once for each setting.'
			: 'Noise over the octaves about the crossover, into the front speakers: it must go through the receiver’s crossover.',
		explain:
			'Left and right have files of two channels, which any player plays; the rest have files in the layout’s order, of eight channels at most.',
		chosen: answer === undefined ? undefined : kinds.indexOf(answer),
		usual: 0,
		offers: [
			{
				label: 'Files to play; write them beside the profile now',
				hint: 'some seconds',
				put: subject => withAnswer(subject, soundId, 'files'),
			},
			{
				label: isTone ? 'Tones of my own' : 'The receiver’s own noise',
				hint: isTone ? 'a generator or a disc' : 'if its bass goes to the subs',
				put: subject => withAnswer(subject, soundId, 'own'),
			},
		],
	});
	return writesFiles(prompt, 'tones');
}

/** The file to play for a reading, and which tone of its row; empty where the sound is one's own. */
export function fileText(profile: Profile, {playInto, signal}: BlendStep, row: readonly BlendStep[]): string {
	if (walkAnswer(profile, soundId) !== 'files') return '';
	if (signal.kind !== 'tone' && playInto.every(id => isLfe(id as ChannelId)))
		return 'The file of sub noise, as for their levels.';
	const file = blendFile(playInto, signal.kind);
	if (signal.kind !== 'tone') return `${file}.`;
	const hertz = [
		...new Set(
			row.flatMap(step =>
				step.signal.kind === 'tone' && step.playInto[0] === playInto[0] ? [step.signal.hertz] : [],
			),
		),
	].sort((a, b) => a - b);
	// The LFE channel of a file is one, whatever its outputs are called.
	const both = playInto.length > 1 ? '; it plays into both outputs' : '';
	return `${file}, tone ${hertz.indexOf(signal.hertz) + 1} of ${hertz.length}${both}.`;
}
