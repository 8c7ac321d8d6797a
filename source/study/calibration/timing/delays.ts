import {type Control, control, receiverOf, timingControl} from '../../../profile/ask/boxes.ts';
import type {LatencyPart} from '../../../profile/ask/latency.ts';
import {mainChannels} from '../../../profile/ask/lines.ts';
import {subsByFeed} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';
import {combinedSigma} from '../../../science/numeric/statistics.ts';
import type {DistanceResult} from '../result.ts';
import {type Branch, type Feed, type SteppedLine, shareAndRound} from '../steps.ts';
import {entryRemarks} from './entryRemarks.ts';
import {middleOf} from './middleOf.ts';
import type {Arrival, TimingResult} from './result.ts';
import {timingRemarks} from './timingRemarks.ts';

/** Less than the tape can tell: 3 mm of way. */
const indifferenceMs = 0.01;

/** Arrival from distance and latency. The speed's share of the uncertainty is common to all and left to `timing`. */
export function arrivalOf(
	id: string,
	distance: DistanceResult,
	latencies: readonly LatencyPart[],
	metresPerSecond: number,
): Arrival {
	const latencyMs = latencies.reduce((sum, {milliseconds}) => sum + milliseconds, 0);
	return {
		id,
		value: (distance.metres / metresPerSecond) * 1000 + latencyMs,
		sigma: (distance.sigmaMetres / metresPerSecond) * 1000,
		distance,
		latencies,
	};
}

/**
What to type in for timing: `delay = latest arrival − arrival`, or `distance = arrival · the receiver's speed`.

Steps of receiver and processor are chosen jointly, so that the largest difference between any two arrivals is as
small as it can be; where the range is too short the loss falls on as few as possible.

@param arrivals - Of channels with a speaker and of subs, ms; those that are missing are left out.
@param relativeSpeedSigma - Standard uncertainty of the speed of sound divided by the speed.
*/
export function timing(
	profile: Profile,
	arrivals: ReadonlyMap<string, Arrival>,
	relativeSpeedSigma: number,
): TimingResult {
	const empty = {channels: new Map(), outputs: new Map(), worstErrorMs: 0, fits: true, remarks: []};
	if (arrivals.size === 0) return empty;
	const box = timingControl(receiverOf(profile).receiver);
	const latest = latestArrival(profile, arrivals);
	// A receiver that takes distances wants them near the true ones; one that takes delays wants them small.
	const neededOf = (arrivalMs: number) => (box.kind === 'delay' ? latest - arrivalMs : -arrivalMs);
	const lines = linesOf(profile, arrivals, neededOf, box.delay);
	const feeds = feedsOf(profile, arrivals, neededOf, box.delay);
	const shared = shareAndRound(lines, feeds, 'least', indifferenceMs);

	const sigmaOf = sigmas(arrivals, relativeSpeedSigma);
	const members = membersOf(profile, arrivals);
	const dialled = (id: string, {exact, stepped}: {exact: number; stepped: number}) => ({
		kind: box.kind,
		exact: box.kind === 'delay' ? exact : -exact * box.entryPerMs,
		stepped: box.toEntry(stepped),
		sigma: sigmaOf(members.get(id) ?? [id]) * box.entryPerMs,
	});
	const channels = new Map([...shared.receiver].map(([id, value]) => [id, dialled(id, value)]));
	return {
		channels,
		outputs: new Map(
			[...shared.outputs].map(([id, value]) => [id, {...value, sigma: sigmaOf(members.get(id) ?? [])}]),
		),
		worstErrorMs: shared.rounding.worstPairwiseError,
		fits: shared.rounding.fits,
		remarks: [
			...timingRemarks(profile, arrivals, shared, box),
			...entryRemarks(channels, members, arrivals, box),
		],
	};
}

function linesOf(
	profile: Profile,
	arrivals: ReadonlyMap<string, Arrival>,
	neededOf: (arrivalMs: number) => number,
	delay: Control,
): SteppedLine[] {
	return mainChannels(profile).flatMap(({id}) => {
		const arrival = arrivals.get(id);
		return arrival ? [{id, exact: neededOf(arrival.value), control: delay}] : [];
	});
}

function feedsOf(
	profile: Profile,
	arrivals: ReadonlyMap<string, Arrival>,
	neededOf: (arrivalMs: number) => number,
	delay: Control,
): Feed[] {
	const {bassProcessor} = profile;
	return [...subsByFeed(profile)].flatMap(([id, byOutput]) => {
		const branches = [...byOutput].flatMap(([output, subs]): Branch[] => {
			const values = subs.flatMap(sub => arrivals.get(sub)?.value ?? []);
			if (values.length === 0) return [];
			const exact = neededOf(middleOf(values));
			if (output === '' || !bassProcessor) return [{exact}];
			const {stepMs, minimumMs, maximumMs} = bassProcessor.delay;
			return [{output, exact, control: control(stepMs, minimumMs, maximumMs)}];
		});
		return branches.length > 0 ? [{id, control: delay, branches}] : [];
	});
}

/** The latest of the speakers' arrivals and of the middles of what hangs on one output, ms. */
function latestArrival(profile: Profile, arrivals: ReadonlyMap<string, Arrival>): number {
	const speakers = mainChannels(profile).flatMap(({id}) => arrivals.get(id)?.value ?? []);
	const branches = [...subsByFeed(profile).values()].flatMap(byOutput =>
		[...byOutput.values()].flatMap(subs => {
			const values = subs.flatMap(sub => arrivals.get(sub)?.value ?? []);
			return values.length > 0 ? middleOf(values) : [];
		}),
	);
	return Math.max(...speakers, ...branches);
}

function membersOf(profile: Profile, arrivals: ReadonlyMap<string, Arrival>): Map<string, string[]> {
	const members = new Map<string, string[]>();
	for (const [feed, byOutput] of subsByFeed(profile)) {
		for (const [output, subs] of byOutput) {
			const present = subs.filter(sub => arrivals.has(sub));
			members.set(feed, [...(members.get(feed) ?? []), ...present]);
			if (output !== '') members.set(output, present);
		}
	}

	return members;
}

/**
Standard uncertainty of one entry against the others, ms. An error of the speed of sound shifts far and near speakers
differently, so its share goes with the distance from the mean of all.
*/
function sigmas(arrivals: ReadonlyMap<string, Arrival>, relativeSpeedSigma: number) {
	const flights = [...arrivals.values()].map(
		({value, latencies}) => value - latencies.reduce((sum, {milliseconds}) => sum + milliseconds, 0),
	);
	const mean = flights.reduce((sum, flight) => sum + flight, 0) / flights.length;
	const ids = [...arrivals.keys()];
	return (members: readonly string[]) => {
		const own = members.map(id =>
			combinedSigma(arrivals.get(id)!.sigma, (flights[ids.indexOf(id)]! - mean) * relativeSpeedSigma),
		);
		return own.length === 0 ? 0 : Math.max(...own);
	};
}
