import {subsOf} from '../profile/ask/subs.ts';
import {isLfe} from '../profile/channels.ts';
import {finding, hasProblem} from '../profile/finding.ts';
import {saidJson} from '../report/said/json.ts';
import {sentenceOf} from '../report/said/said.ts';
import {sayIn} from '../report/said/say.ts';
import {speedOfSound} from '../science/acoustics/air.ts';
import {profileCurves} from '../study/hearing/profileCurves.ts';
import {besideRecorded} from '../study/room/besideRecorded.ts';
import {roomInputs} from '../study/room/roomInputs.ts';
import {studyRoom} from '../study/room/roomStudy.ts';
import {seatRow} from '../study/room/seatRow.ts';
import {isInside} from '../study/room/shape.ts';
import {adjustNetwork} from '../study/survey/adjust.ts';
import {type Command, exitCode} from './command.ts';
import {forResult, profileFrom} from './profileArgument.ts';

/** Cells of the map of the seat row. */
const rowCells = 48;

export const command: Command = {
	name: 'room',
	summary: 'Compute standing waves, the bass at every seat, boundary dips, first reflections',
	takes: 'PROFILE',
	flags: {
		full: {type: 'boolean', help: 'Every standing wave to 200 Hz and every first reflection'},
		words: {type: 'boolean', help: 'Charts in words, for a screen reader'},
	},
	examples: [
		['roomtare room cellar-2026', 'what the room does to the bass, and where reflections come from'],
		['roomtare room cellar-2026 --full --words', 'everything, without drawings'],
		['roomtare room cellar-2026 --json', 'for a script: modes, responses, reflections'],
	],
	async run(context) {
		const profile = forResult(context, await profileFrom(context, context.input[0]!));
		const inputs = roomInputs(profile, adjustNetwork(profile), speedOfSound(profile.air).metresPerSecond);
		const inMetres = sayIn(profile);
		if ('missing' in inputs) {
			const missing = finding('problem', 'room-size-missing', [], {missing: inputs.missing});
			if (context.flags.json) context.out(saidJson({findings: [missing]}, inMetres));
			else {
				const {wrap} = await import('../report/wrap.ts');
				const sentence = sentenceOf(missing, sayIn(profile, profile.lengthUnit));
				context.out(wrap(sentence, context.columns).join('\n'));
			}

			return exitCode.no;
		}

		const computed = studyRoom(inputs);
		const lfe = profile.channels.filter(({id}) => isLfe(id)).map(({id}) => id as string);
		const subs = subsOf(profile).map(({id}) => id);
		// All subs together: what the low-frequency channel plays, or all of them named one by one.
		const recorded = profileCurves(profile)
			.filter(({source, part}) => {
				const sources = source.split('+');
				const isWhole = subs.length > 0 && subs.every(id => sources.includes(id));
				return (part === 'all' && lfe.length === 1 && source === lfe[0]) || isWhole;
			})
			.map(({seat, curve}) => ({seat, frequenciesHertz: curve.frequenciesHz, levelsDb: curve.levelsDb}));
		const beside = besideRecorded(
			computed,
			inputs.seats.filter(({at}) => isInside(inputs.shape, at)).map(({id}) => id),
			recorded,
		);
		const study = {...computed, findings: [...computed.findings, ...beside]};
		const row =
			study.volumeCubicMetres > 0
				? seatRow(inputs, rowCells)
				: {placesMetres: [], frequenciesHertz: [], levelsDb: []};
		if (context.flags.json) context.out(saidJson({shape: inputs.shape, ...study, seatRow: row}, inMetres));
		else {
			const {roomStudyText} = await import('../report/room/text.ts');
			context.out(
				roomStudyText(profile, inputs, study, row, {
					width: context.columns,
					isInWords: context.flags.words === true,
					isFull: context.flags.full === true,
				}),
			);
		}

		return hasProblem(study.findings) ? exitCode.no : exitCode.fine;
	},
};
