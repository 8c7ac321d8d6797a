import {bassManagement} from '../profile/ask/bassManagement.ts';
import {subsOf} from '../profile/ask/subs.ts';
import {hasProblem} from '../profile/finding.ts';
import type {Profile} from '../profile/types.ts';
import {saidJson} from '../report/said/json.ts';
import {sayIn} from '../report/said/say.ts';
import {blend} from '../study/calibration/blend/blend.ts';
import {blendInputs} from '../study/calibration/blend/blendInputs.ts';
import type {BlendWay} from '../study/calibration/blend/odds.ts';
import {type CrossoverCurves, crossoverCurves} from '../study/calibration/crossover/curve.ts';
import {subModel} from '../study/calibration/crossover/model.ts';
import {assumedBox, suggestCrossovers} from '../study/calibration/crossover/suggest.ts';
import {headroom} from '../study/calibration/headroom/headroom.ts';
import {oddsOfRecording} from '../study/hearing/odds.ts';
import {recordedState} from '../study/hearing/recordedState.ts';
import {offeredRecording} from '../study/playing/offeredRecording.ts';
import {type Command, type CommandContext, type ExitCode, exitCode} from './command.ts';
import {costlyPartsOf} from './costlyParts.ts';
import {forResult, profileFrom} from './profileArgument.ts';

export const command: Command = {
	name: 'blend',
	summary: 'Make subs and speakers add up: delay, polarity, crossovers, headroom',
	takes: 'PROFILE',
	flags: {
		way: {
			type: 'string',
			value: 'WAY',
			choices: ['tones', 'search'],
			help: 'Ask for tones at three delays, or search the loudest of ten settings',
		},
		pair: {
			type: 'boolean',
			help: 'Set two subs against each other first: what to read next, or what it found',
		},
		crossover: {type: 'boolean', help: 'Rank the crossovers instead, with reasons and curves'},
		headroom: {
			type: 'boolean',
			help: 'Show instead how loud each channel can play, and which gives out first',
		},
	},
	examples: [
		['roomtare blend cellar-2026', 'what the tones say, what to set, what to read next'],
		['roomtare blend cellar-2026 --way search', 'the readings that search the loudest of ten settings'],
		['roomtare blend cellar-2026 --pair', 'two subs against each other, for the bass of the LFE channel'],
		['roomtare blend cellar-2026 --crossover', 'every crossover choice, ranked, with reasons and curves'],
		['roomtare blend cellar-2026 --headroom', 'levels in reach at each seat against reference gain'],
		['roomtare blend - --json < cellar.json', 'everything as JSON, from standard input'],
	],
	async run(context) {
		const profile = forResult(context, await profileFrom(context, context.input[0]!));
		if (context.flags.crossover) return printCrossovers(context, profile);
		if (context.flags.headroom) return printHeadroom(context, profile);
		return context.flags.pair ? printPair(context, profile) : printBlend(context, profile);
	},
};

function codeOf(remarks: Parameters<typeof hasProblem>[0]): ExitCode {
	return hasProblem(remarks) ? exitCode.no : exitCode.fine;
}

async function printBlend({flags, out, columns}: CommandContext, profile: Profile): Promise<ExitCode> {
	const way = flags.way as BlendWay | undefined;
	const result = blend(blendInputs(profile, costlyPartsOf(profile)), way);
	const recorded = recordedState(profile);
	if (flags.json) {
		out(saidJson({...result, recorded}, sayIn(profile)));
	} else {
		const {blendText} = await import('../report/bass/blend.ts');
		const takes = offeredRecording(profile);
		const offer = takes && result.status !== 'nothing' ? {takes, odds: oddsOfRecording} : undefined;
		out(blendText(profile, result, columns, recorded, offer));
	}

	return result.status === 'nothing' || result.status === 'reading' ? exitCode.no : exitCode.fine;
}

async function printPair({flags, out, columns}: CommandContext, profile: Profile): Promise<ExitCode> {
	const result = blend(blendInputs(profile, costlyPartsOf(profile)));
	const {pair, seat, subs} = result;
	if (flags.json) {
		out(saidJson({seat, subs, ...pair}, sayIn(profile)));
	} else {
		const {subsPairText} = await import('../report/bass/pair.ts');
		out(subsPairText(profile, result, columns));
	}

	return !pair || pair.status === 'reading' ? exitCode.no : exitCode.fine;
}

async function printCrossovers({flags, out, columns}: CommandContext, profile: Profile): Promise<ExitCode> {
	const suggestion = suggestCrossovers(profile);
	if (flags.json) {
		out(saidJson({...suggestion, channels: Object.fromEntries(suggestion.channels)}, sayIn(profile)));
	} else {
		const {rankingText} = await import('../report/bass/crossover.ts');
		const sub = subModel(subsOf(profile));
		const management = bassManagement(profile.receiver?.crossover);
		const curves = new Map<string, CrossoverCurves>();
		for (const [id, {hertz, ranking}] of suggestion.channels) {
			const choice = ranking.find(each => each.hertz === hertz);
			if (!choice) continue;
			const {box} = assumedBox(profile.channels.find(channel => channel.id === id)?.speaker);
			curves.set(id, crossoverCurves(box, sub, management, choice.hertz, choice.subDelayMs, choice.inverted));
		}

		out(rankingText(profile, suggestion, {width: columns, curves}));
	}

	return codeOf(suggestion.remarks);
}

async function printHeadroom({flags, out, columns}: CommandContext, profile: Profile): Promise<ExitCode> {
	const result = headroom(profile, costlyPartsOf(profile));
	if (flags.json) {
		out(saidJson(result, sayIn(profile)));
	} else {
		const {headroomText} = await import('../report/bass/headroom.ts');
		out(headroomText(profile, result, columns));
	}

	return codeOf(result.remarks);
}
