import {meterSigmaOf} from '../../../profile/ask/readings.ts';
import {listed} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {formatNumber, formatSigned} from '../../../profile/units/decimalText.ts';
import type {JudgedRound} from '../../../study/calibration/proof/judgedRound.ts';
import {limitOf} from '../../../study/calibration/proof/limits.ts';
import type {ProofPlanItem} from '../../../study/calibration/proof/planItem.ts';
import {atomsOf, readingKey} from '../../../study/calibration/proof/rounds.ts';
import {levelPrompt} from '../meter/levelPrompt.ts';
import {pagePrompt} from '../prompt/pagePrompt.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {judgedOf, planOf, provenSet} from './proofOf.ts';

const roundCaution =
	'Ears: turn the master volume down before the signal starts, then up to where it stood in the first round.';
const nextCaution = 'Ears: master down before anything is switched, then up to where it stood.';

/** Fewer readings cannot tell a moved master volume from one channel that is off. */
const fewReadings = 3;

/** The stop Proof: its page, and every reading that the first round lets predict. */
export function proofPrompts(profile: Profile): Prompt<Profile>[] {
	const page = pagePrompt<Profile>(
		'proof',
		'Does it read what was predicted?',
		'A second round with the settings typed in; a slip shows as a level that is not the predicted one.',
	);
	const plan = planOf(profile);
	const judged = plan.some(({taken}) => taken > 0) ? judgedOf(profile).readings : [];
	const unclear = new Set(judged.filter(({verdict}) => verdict === 'again').map(({key}) => key));
	return [page, ...plan.map(item => itemPrompt(profile, item, unclear.has(item.key)))];
}

/** @param isUnclear - It was read, and lies where only another look decides: it is open again. */
function itemPrompt(profile: Profile, item: ProofPlanItem, isUnclear: boolean): Prompt<Profile> {
	const {key, source, name, seat, seatName, signal, weighting, predicted, settled} = item;
	const limitDb = limitOf(profile, signal, Math.hypot(meterSigmaOf(profile), predicted.sigma));
	const prompt = levelPrompt(profile, {
		id: `proof:${key}`,
		stop: 'proof',
		question: `${name} at ${seatName}`,
		about: `${settled ? 'The recording says it is within its limit; it need not be read. ' : ''}${playText(profile, item)} Predicted: ${formatNumber(predicted.value, 1)} dB; within ${formatNumber(limitDb, 1)} dB of that is met.`,
		explain: item.assumption
			? item.assumption === 'in-phase'
				? 'Predicted as if the subs added up in phase: they were not read together as they are meant to stand.'
				: 'Predicted with several subs as one source at this tone.'
			: 'First-round level, plus what the settings change. A repeat makes the verdict surer.',
		caution: roundCaution,
		briefCaution: nextCaution,
		row: source[0],
		weighting,
		isOwn: reading =>
			reading.round === 'proof' &&
			reading.signal !== undefined &&
			readingKey(atomsOf(profile, reading.source), reading.seat, reading.signal) === key,
		made: subject => ({
			source: source.length === 1 ? source[0]! : [...source],
			seat,
			signal,
			round: 'proof',
			...(provenSet(subject) ? {inForce: provenSet(subject)!.id} : {}),
		}),
		hint: after => verdictText(key, judgedOf(after)),
	});
	if (settled && !prompt.isAnswered) return {...prompt, isAnswered: true, isRequired: false};
	return isUnclear ? {...prompt, isAnswered: false} : prompt;
}

function playText(
	{subs = []}: Pick<Profile, 'subs'>,
	{signal, shows, name, source, weighting}: ProofPlanItem,
): string {
	const what = signal.kind === 'tone' ? `Tone of ${signal.hertz} Hz` : 'Noise';
	const isSubs = source.every(id => subs.some(sub => sub.id === id));
	const others = subs.filter(({id}) => !source.includes(id));
	// A tone comes from a file, not from the receiver's menu: it has to be said by which way, and what keeps quiet.
	const through = signal.kind === 'tone' && isSubs ? ' through the LFE channel' : '';
	const quiet =
		signal.kind === 'tone' && isSubs && others.length > 0
			? ` Mute ${listed(others.map(sub => sub.name))} meanwhile.`
			: '';
	const alone = shows === 'level' ? ' alone' : ' together';
	return `${what}${through} on ${name}${alone}.${quiet} Meter at ear height, ${weighting}, slow.`;
}

/**
Residual and verdict of one reading, in words. Where a shift of all readings explains it, that is said: after one or
two readings it may as well be this channel alone.
*/
function verdictText(key: string, {readings, shift}: JudgedRound): string | undefined {
	const reading = readings.find(one => one.key === key);
	if (!reading) return undefined;
	const {rawResidual, residual, verdict, tolerance} = reading;
	const off = (decibels: number) =>
		Math.abs(decibels) < 0.05
			? 'As predicted'
			: `${formatNumber(Math.abs(decibels), 1)} dB ${decibels < 0 ? 'below' : 'above'} the prediction`;
	if (verdict === 'again' && readings.length < fewReadings)
		return `${off(rawResidual)}: either the master volume or this channel; the next readings tell which.`;
	if (shift?.isMoved && verdict !== 'missed' && Math.abs(rawResidual) > tolerance)
		return `${off(rawResidual)}, as all are by ${formatSigned(shift.value, 1)} dB: that is the master volume. Otherwise met.`;
	const words = {
		met: 'met.',
		again: `not clearly within ${formatNumber(tolerance, 1)} dB. Put the meter down anew and read again; the mean decides.`,
		missed: `missed, beyond ${formatNumber(tolerance, 1)} dB again and again. See the page of this stop.`,
	}[verdict];
	return `${off(residual)}: ${words}`;
}
