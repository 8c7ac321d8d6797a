import {control, receiverOf} from '../../../profile/ask/boxes.ts';
import {channelOffsetOf} from '../../../profile/ask/channelOffset.ts';
import {subsByFeed} from '../../../profile/ask/subs.ts';
import {leastMasterChangeDb} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';
import {combinedSigma, median} from '../../../science/numeric/statistics.ts';
import type {Dialled} from '../result.ts';
import {type Branch, type Feed, type SteppedLine, shareAndRound} from '../steps.ts';
import type {LevelFinding} from './facts.ts';
import type {SeatLevel} from './levels.ts';
import {commonNeedDb, reachedNeeds} from './ownKnob.ts';
import {seatTermDb} from './seatTerm.ts';
import type {SubNeed} from './subs.ts';
import {trimRemarks} from './trimRemarks.ts';

/** Less than any meter can tell. */
const indifferenceDb = 0.01;

export type TrimResult = {
	readonly channels: ReadonlyMap<string, Dialled>;
	readonly outputs: ReadonlyMap<string, Dialled>;
	/** Stepped total minus wanted total minus the common offset, by channel, output or feed, dB. */
	readonly errors: ReadonlyMap<string, number>;
	/** What trims leave in common, the other way round. */
	readonly masterVolumeChangeDb: number;
	/** How far to turn the master volume: 0 where that is less than the box can do, or anybody hears. */
	readonly masterVolumeTurnDb: number;
	readonly worstErrorDb: number;
	readonly fits: boolean;
	readonly remarks: readonly LevelFinding[];
};

/**
Trims that bring every channel to the target: `trim in force + target − level`.

Only differences are the trims' business; what they leave in common goes to the master volume. Where all trims can reach
the target they do, and the remainder is less than a step. Where they cannot, the master volume has to move anyway, and
the answer with the smallest change from the trims in force is taken. A sub that no entry brings to its level is to be
turned at its own knob, and moves no other channel.

@param levels - Of channels with a speaker.
@param needs - Of subs.
@param targetDb - Of channels with a speaker, dB; a sub's target is part of what it needs.
*/
export function trims(
	profile: Profile,
	levels: ReadonlyMap<string, SeatLevel>,
	needs: ReadonlyMap<string, SubNeed>,
	targetDb: number,
): TrimResult | undefined {
	if (levels.size === 0 && needs.size === 0) return undefined;
	const {trim} = receiverOf(profile).receiver;
	const own = control(trim.stepDb, trim.minimumDb, trim.maximumDb);
	const lines: SteppedLine[] = [...levels].map(([id, level]) => ({
		id,
		exact: targetDb + channelOffsetOf(profile, id) - level.atZeroTrimDb,
		control: own,
		current: level.gainInForceDb,
	}));
	const reached = reachedNeeds(profile, needs, own, commonNeedDb(lines));
	const feeds = feedsOf(profile, reached.needs, own);
	let shiftDb = 0;
	let shared = shareAndRound(lines, feeds, 'cut', indifferenceDb);
	if (Math.abs(shared.rounding.offset) > own.step) {
		const changes = lines.map(({exact, current}) => exact - (current ?? 0));
		shiftDb = -median(
			changes.length > 0 ? changes : feeds.flatMap(feed => feed.branches.map(({exact}) => exact)),
		);
		shared = shareAndRound(shifted(lines, shiftDb), shiftedFeeds(feeds, shiftDb), 'cut', indifferenceDb);
	}

	const offset = shiftDb + shared.rounding.offset;
	const sigmaOf = sigmas(profile, levels, needs);
	const dialled = ([id, value]: readonly [string, {exact: number; stepped: number}]): [string, Dialled] => [
		id,
		{...value, sigma: sigmaOf(id)},
	];
	return {
		channels: new Map([...shared.receiver].map(dialled)),
		outputs: new Map([...shared.outputs].map(dialled)),
		errors: new Map([...shared.errors].map(([id, error]) => [id, error - shared.rounding.offset])),
		masterVolumeChangeDb: offset === 0 ? 0 : -offset,
		masterVolumeTurnDb: Math.abs(offset) < Math.max(leastMasterChangeDb, own.step) ? 0 : -offset,
		worstErrorDb: shared.rounding.worstPairwiseError,
		fits: shared.rounding.fits,
		remarks: [...reached.remarks, ...trimRemarks(shared, own, -offset)],
	};
}

function shifted(lines: readonly SteppedLine[], shiftDb: number): SteppedLine[] {
	return lines.map(line => ({...line, exact: line.exact + shiftDb}));
}

function shiftedFeeds(feeds: readonly Feed[], shiftDb: number): Feed[] {
	return feeds.map(feed => ({
		...feed,
		branches: feed.branches.map(branch => ({...branch, exact: branch.exact + shiftDb})),
	}));
}

function feedsOf(profile: Profile, needs: ReadonlyMap<string, SubNeed>, own: Feed['control']): Feed[] {
	const gain = profile.bassProcessor?.gain;
	return [...subsByFeed(profile)].flatMap(([id, byOutput]) => {
		const branches = [...byOutput].flatMap(([output, subs]): Branch[] => {
			const gains = subs.flatMap(sub => needs.get(sub)?.gainDb ?? []);
			if (gains.length === 0) return [];
			// Subs that share an output cannot be matched by it; the middle errs least.
			const exact = (Math.min(...gains) + Math.max(...gains)) / 2;
			if (output === '' || !gain) return [{exact}];
			return [{output, exact, control: control(gain.stepDb, gain.minimumDb, gain.maximumDb)}];
		});
		return branches.length > 0 ? [{id, control: own, branches}] : [];
	});
}

function sigmas(
	profile: Profile,
	levels: ReadonlyMap<string, SeatLevel>,
	needs: ReadonlyMap<string, SubNeed>,
): (id: string) => number {
	const bySub = new Map<string, string[]>();
	for (const [feed, byOutput] of subsByFeed(profile)) {
		bySub.set(feed, [...byOutput.values()].flat());
		for (const [output, subs] of byOutput) if (output !== '') bySub.set(output, subs);
	}

	return id => {
		const level = levels.get(id);
		if (level) return combinedSigma(level.sigmaDb, seatTermDb(profile, id, level.points));
		return Math.max(0, ...(bySub.get(id) ?? []).map(sub => needs.get(sub)?.sigmaDb ?? 0));
	};
}
