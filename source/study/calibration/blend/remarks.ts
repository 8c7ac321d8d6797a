import {subLatency} from '../../../profile/ask/latency.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {listed, nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import type {Remark} from '../result.ts';
import {inDb, inMs, number, remark} from '../words.ts';
import type {CollectedPair} from './collect.ts';
import type {BlendFit} from './fit.ts';
import type {Alignment} from './optimum.ts';
import type {SeparatingReading} from './separate.ts';
import type {BlendSetting} from './setting.ts';

/** Added delay that still counts as nothing to change, ms. */
const smallMs = 0.1;

/** What the fit itself leaves open. */
export function fitRemarks(
	pair: CollectedPair,
	fit: BlendFit,
	next: SeparatingReading | undefined,
): Remark[] {
	const remarks: Remark[] = [];
	if (fit.minima.length > 1) {
		const advice = next
			? ` Read both at ${number(next.hertz, 0)} Hz with ${inMs(next.addedDelayMs)} added next: the answers predict ${listed(next.predictedDb.map(level => inDb(level)))} there, without weighting.`
			: '';
		remarks.push(
			remark(
				'doubt',
				'several-answers',
				`The readings allow ${fit.minima.length} answers for delay and polarity alike.${advice}`,
				pair.id,
			),
		);
	}

	if (fit.scale > 1) {
		remarks.push(
			remark(
				'doubt',
				'fit-worse-than-noise',
				`One delay explains the readings only to within ${number(Math.sqrt(fit.scale))} times the meter's noise. The room turns the phase at these tones too, or something moved between readings; the uncertainty was widened. Trust the confirming readings more than the figure.`,
				pair.id,
			),
		);
	}

	return remarks;
}

/** What the boxes can and cannot do of the alignment wanted. */
export function settingRemarks(
	profile: Profile,
	pair: CollectedPair,
	fit: BlendFit,
	alignment: Alignment | undefined,
	setting: BlendSetting | undefined,
): Remark[] {
	const [minimum] = fit.minima;
	if (!alignment || !minimum) return [];
	const remarks: Remark[] = [];
	const moved = listed(pair.moved.map(id => nameOf(profile, id)));
	const isOne = pair.moved.length === 1;
	if (!setting) {
		remarks.push(
			remark(
				'problem',
				'no-box-delays',
				`${inMs(alignment.addedMs)} of delay wanted, but no box can delay ${moved} alone. Use the phase control on the sub, or move it ${alignment.addedMs > 0 ? 'away from' : 'nearer to'} the seat.`,
				pair.id,
			),
		);
		return remarks;
	}

	const stepMs = Math.max(smallMs, 2 * minimum.sigmaMs);
	if (Math.abs(setting.leftMs) > Math.max(stepMs, 0.6)) {
		remarks.push(
			remark(
				'problem',
				'delay-out-of-reach',
				`${inMs(alignment.addedMs)} of delay wanted, the boxes make ${inMs(setting.addedMs)}; ${inMs(Math.abs(setting.leftMs))} are left.`,
				pair.id,
			),
		);
	}

	if (!pair.standing) {
		remarks.push(
			remark(
				'doubt',
				'settings-unknown',
				`The readings do not say which settings stood, so only the change is told, not what to enter.`,
				pair.id,
			),
		);
	}

	if (Math.abs(alignment.addedMs) <= stepMs && !alignment.flip) {
		remarks.push(
			remark(
				'note',
				'blend-stands',
				`The delay wanted differs by ${inMs(alignment.addedMs)} from what stands, within its uncertainty. Nothing to change.`,
				pair.id,
			),
		);
	}

	const latencies = pair.moved.flatMap(id => {
		const sub = subsOf(profile).find(candidate => candidate.id === id);
		return sub ? subLatency(profile, sub) : [];
	});
	if (latencies.length > 0) {
		const boxes = [...new Map(latencies.map(part => [part.at, part])).values()];
		remarks.push(
			remark(
				'note',
				'latency-included',
				`The latency of ${listed(boxes.map(({at, milliseconds}) => `${at} (${inMs(milliseconds)})`))} is in the readings. Add nothing for it by hand.`,
				pair.id,
			),
		);
	}

	if (setting.actions.some(({box, what}) => box === 'sub' && what === 'polarity')) {
		remarks.push(
			remark(
				'advice',
				'polarity-at-sub',
				`Neither receiver nor processor turns the polarity of ${moved}. Use the switch on ${isOne ? 'the sub' : 'each sub'}; without one, turn both leads of every other speaker instead, with the receiver off.`,
				pair.id,
			),
		);
	}

	return remarks;
}
