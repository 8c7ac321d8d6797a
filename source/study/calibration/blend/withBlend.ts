import {listed, nameOf} from '../../../profile/names.ts';
import type {ChannelId, Profile} from '../../../profile/types.ts';
import type {ChannelSolution, Dialled, OutputSolution, Remark, Solution} from '../result.ts';
import {toSettingsSet} from '../toSettingsSet.ts';
import {inMs, remark} from '../words.ts';
import type {BlendPairResult} from './blend.ts';
import {blendOf} from './blendMemory.ts';
import type {CollectedPair} from './collect.ts';
import {type BlendAction, type BlendSetting, planSetting} from './setting.ts';
import {groupStanding, type StandingSet} from './standing.ts';

/**
A solution with the delay and polarity of the subs as the tones through the crossover want them, where the readings
leave one answer and say which settings stood.

The tones fix how much later the subs must play than the mains; that difference is kept whatever else of the settings
changes. Subs among each other come first, then all of them against the mains.

@param solution - What distances and levels give.
@returns The solution itself where no tones were read.
*/
export function withBlend(profile: Profile, solution: Solution): Solution {
	if (!profile.meter?.some(({signal, setAside}) => signal?.kind === 'tone' && !setAside)) return solution;
	const {results, collected} = blendOf(profile);
	const done = new Set<string>();
	let current = solution;
	for (const result of results) {
		const pair = collected.get(result.id);
		const group = `${result.kind} ${result.moved.join('+')}`;
		if (!pair || done.has(group)) continue;
		const blended = blendPair(profile, current, pair, result);
		if (!blended) continue;
		current = blended;
		done.add(group);
	}

	return current;
}

function blendPair(
	profile: Profile,
	solution: Solution,
	pair: CollectedPair,
	result: BlendPairResult,
): Solution | undefined {
	const [answer, other] = result.minima;
	if (!answer || other || !result.alignment || !pair.standing) return undefined;
	const set = toSettingsSet(solution, {id: 'blended'});
	const stood = difference(profile, pair.standing, pair);
	const stands = difference(profile, set, pair);
	if (stood.delayMs === undefined || stands.delayMs === undefined) return undefined;
	const wantedMs = stood.delayMs + result.alignment.addedMs - stands.delayMs;
	const isTurned = (stood.isInverted !== result.alignment.flip) !== stands.isInverted;
	const setting = planSetting(profile, {...pair, standing: set}, wantedMs, isTurned);
	return setting && applied(profile, solution, pair, setting, wantedMs, answer.sigmaMs);
}

/** What a set of settings does to the moved group against the still one. */
function difference(profile: Profile, set: StandingSet, {still, moved}: CollectedPair) {
	const ofStill = groupStanding(profile, set, still);
	const ofMoved = groupStanding(profile, set, moved);
	const isKnown = ofStill.delayMs !== undefined && ofMoved.delayMs !== undefined;
	return {
		delayMs: isKnown ? ofMoved.delayMs! - ofStill.delayMs! : undefined,
		isInverted: ofStill.inverted !== ofMoved.inverted,
	};
}

function applied(
	profile: Profile,
	solution: Solution,
	pair: CollectedPair,
	{actions, addedMs}: BlendSetting,
	wantedMs: number,
	sigmaMs: number,
): Solution {
	const names = listed(pair.moved.map(id => nameOf(profile, id)));
	const note = remark(
		'note',
		'blended',
		`${names}: set by the tones read through the crossover, ${inMs(wantedMs)} from what the distances give.`,
	);
	const of = (box: BlendAction['box'], about: string) =>
		actions.filter(action => action.box === box && action.about === about);
	// One line of actions moves by whole steps; the exact value is as far off as the steps leave it.
	const dialled = (before: Dialled, {to, change}: BlendAction): Dialled => {
		const scale = addedMs === 0 || change === undefined ? 0 : change / addedMs;
		return {
			exact: before.stepped + scale * wantedMs,
			stepped: to ?? before.stepped,
			sigma: Math.hypot(before.sigma, Math.abs(scale) * sigmaMs),
		};
	};

	return {
		...solution,
		channels: solution.channels.map((channel): ChannelSolution => {
			const own = of('receiver', channel.id);
			return own.length === 0 ? channel : changedChannel(channel, own, note, dialled);
		}),
		outputs: solution.outputs.map((output): OutputSolution => {
			const own = of('processor', output.id);
			if (own.length === 0) return output;
			const timed = own.find(({what}) => what === 'delay');
			return {
				...output,
				...(output.delayMs && timed ? {delayMs: dialled(output.delayMs, timed)} : {}),
				...turned(output, own),
				remarks: [...output.remarks, {...note, about: output.id}],
			};
		}),
		remarks: [...solution.remarks, ...switchRemarks(profile, actions)],
	};
}

function changedChannel(
	channel: ChannelSolution,
	own: readonly BlendAction[],
	note: Remark,
	dialled: (before: Dialled, action: BlendAction) => Dialled,
): ChannelSolution {
	const timed = own.find(({what}) => what !== 'polarity');
	return {
		...channel,
		...(channel.timing && timed
			? {timing: {...dialled(channel.timing, timed), kind: channel.timing.kind}}
			: {}),
		...turned(channel, own),
		remarks: [...channel.remarks, {...note, about: channel.id as ChannelId}],
	};
}

function turned(before: {readonly polarityInverted?: boolean}, own: readonly BlendAction[]) {
	const isTurned = own.some(({what}) => what === 'polarity');
	return isTurned ? {polarityInverted: !before.polarityInverted} : {};
}

/** Polarity that only a switch on the sub turns is in no set of settings, so it is said. */
function switchRemarks(profile: Profile, actions: readonly BlendAction[]): Remark[] {
	return actions
		.filter(({box, what}) => box === 'sub' && what === 'polarity')
		.map(({about}) =>
			remark(
				'advice',
				'polarity-at-sub',
				`${nameOf(profile, about)}: turn its polarity switch; neither receiver nor processor does it.`,
				about,
			),
		);
}
