import {Trouble} from '../platform/trouble.ts';
import {nameOf} from '../profile/names.ts';
import type {Profile} from '../profile/types.ts';
import {saidJson} from '../report/said/json.ts';
import {sayIn} from '../report/said/say.ts';
import {againstPlan} from '../study/placement/againstPlan.ts';
import {nextReadings} from '../study/placement/guidedTape.ts';
import {moved, readMoves} from '../study/placement/moves.ts';
import {isPlacementRefused, judgePlacement} from '../study/placement/placement.ts';
import {planPoints} from '../study/placement/planPoints.ts';
import {waysBySpeaker} from '../study/placement/way.ts';
import {adjustNetwork} from '../study/survey/adjust.ts';
import type {NetworkResult} from '../study/survey/result.ts';
import {type Command, exitCode} from './command.ts';
import {forResult, profileFrom} from './profileArgument.ts';

export const command: Command = {
	name: 'place',
	summary: 'Show where everything stands: angles, symmetry, what to move, aiming',
	takes: 'PROFILE',
	flags: {
		move: {
			type: 'string',
			isMultiple: true,
			value: 'NAME=WAY:LENGTH',
			help: 'Try a move; ways: left, right, forward, back, up, down; or NAME=X,Y,Z',
		},
		words: {type: 'boolean', help: 'Tell the plan in words instead of drawing it'},
		next: {type: 'number', value: 'COUNT', help: 'List the readings that would help most', default: 0},
	},
	examples: [
		['roomtare place cellar-2026', 'places, angles, corrections and aiming'],
		['roomtare place cellar-2026 --move FL=left:11cm', 'what if the front left slid 11 cm to the left'],
		['roomtare place cellar-2026 --move middle=forward:0.3 --move FC=up:0.1', 'several things at once'],
		['roomtare place cellar-2026 --next 5', 'the five readings that remove the most doubt'],
		['roomtare place cellar-2026 --words', 'the plan told in words, for a screen reader'],
		['roomtare place - --json < cellar.json', 'from standard input, for a script'],
	],
	async run(context) {
		const asked = await profileFrom(context, context.input[0]!);
		const profile = forResult(context, asked);
		const measured = adjustNetwork(profile);
		// What was typed is in the reader's unit, whatever the answer is in.
		const result = withMoves(asked, measured, [context.flags.move ?? []].flat() as string[]);
		const placement = judgePlacement(profile, result);
		const planned = againstPlan(profile, result);
		const count = (context.flags.next as number | undefined) ?? 0;
		const next = count > 0 ? nextReadings(profile, count, measured) : [];
		if (context.flags.json) {
			const {covariance: _, ...network} = result;
			context.out(saidJson({network, placement, ...(planned.length > 0 && {planned}), next}, sayIn(profile)));
		} else {
			const {placementText} = await import('../report/placement.ts');
			const {lengthUnit = 'm'} = profile;
			context.out(
				placementText(result, placement, {
					lengthUnit,
					width: context.columns,
					corrections: waysBySpeaker(result, placement.corrections, placement.seat),
					plan: planPoints(result, profile.screen, profile.room),
					againstPlan: planned,
					isPlanInWords: context.flags.words === true,
					say: sayIn(profile, lengthUnit),
				}),
			);
			if (count > 0) context.out(nextText(profile, next));
		}

		return isPlacementRefused(result, placement) ? exitCode.no : exitCode.fine;
	},
};

function withMoves(profile: Profile, result: NetworkResult, texts: readonly string[]): NetworkResult {
	if (texts.length === 0) return result;
	const read = readMoves(texts, profile.lengthUnit ?? 'm');
	if (!read.ok) throw new Trouble(`--move: ${read.why}`);
	try {
		return moved(result, read.moves);
	} catch (error) {
		if (error instanceof RangeError) throw new Trouble(`--move: ${error.message}`);
		throw error;
	}
}

function nextText(profile: Profile, next: ReturnType<typeof nextReadings>): string {
	if (next.length === 0) return '\nNothing more to measure: every place is known and controlled.';
	const lines = next.map(({from, to}) => `  - ${nameOf(profile, from)} to ${nameOf(profile, to)}`);
	return ['', 'Measure next', ...lines].join('\n');
}
