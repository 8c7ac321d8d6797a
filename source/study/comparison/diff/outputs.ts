import {receiverSpeed} from '../../../profile/ask/boxes.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {OutputSolution} from '../../calibration/result.ts';
import {partsOf} from './parts.ts';
import type {Match, Part, SettingChange} from './profileDiff.ts';
import type {Solved} from './solved.ts';
import {timingParts} from './timingParts.ts';
import {changeScale, kindWeight} from './weights.ts';

function outputOf({profile, solution}: Solved, id: string) {
	const solved = solution.outputs.find(output => output.id === id);
	const set = standingSettings(profile)?.outputs?.[id];
	return {
		solved,
		delayMs: set?.delayMs?.stepped ?? solved?.delayMs?.stepped,
		gainDb: set?.gainDb?.stepped ?? solved?.gainDb?.stepped,
		isInverted: set?.polarityInverted ?? solved?.polarityInverted ?? false,
	};
}

/** What one output's delay was computed from, where it feeds one sub whose arrival is known. */
function delaySide({profile, solution}: Solved, id: string, dialled: number) {
	const arrivalOf = (output: OutputSolution) => {
		const subs = solution.subs.filter(sub => output.subs.includes(sub.id));
		return subs.length === 1 ? subs[0] : undefined;
	};

	const solved = solution.outputs.flatMap(output => {
		const sub = arrivalOf(output);
		return output.delayMs && sub?.arrivalMs
			? [{output, sub, ...output.delayMs, arrivalMs: sub.arrivalMs.value}]
			: [];
	});
	const own = solved.find(({output}) => output.id === id);
	const limits = profile.bassProcessor?.delay;
	if (!own || !limits) return undefined;
	return {
		kind: 'delay' as const,
		isBass: true,
		dialled,
		exact: own.exact,
		stepped: own.stepped,
		sigma: own.sigma,
		arrivalMs: own.arrivalMs,
		distanceMetres: own.sub.distance?.metres,
		speedOfSound: solution.speedOfSound.metresPerSecond,
		receiverSpeed: receiverSpeed(profile.receiver),
		// The earliest of them: what one waits longer than that, the blend has moved it on purpose.
		sharedOffset: Math.min(...solved.map(({exact, arrivalMs}) => exact + arrivalMs)),
		sharedShift: median(solved.map(({exact, stepped}) => stepped - exact)),
		step: limits.stepMs,
		minimum: limits.minimumMs,
		maximum: limits.maximumMs,
	};
}

/** A gain's change: how far what stands there was rounded, and what was asked for. */
function gainParts(
	change: number,
	before: OutputSolution | undefined,
	after: OutputSolution | undefined,
): Part[] {
	const [was, is] = [before?.gainDb, after?.gainDb];
	if (!was || !is) return partsOf([['unexplained', change]]);
	const rounding = is.stepped - is.exact - (was.stepped - was.exact);
	const level = is.exact - was.exact;
	return partsOf([
		['level at seat', level],
		['rounding', rounding],
		['chosen', change - level - rounding],
	]);
}

/** Delay, gain and polarity of the bass processor's outputs, each change with its causes. */
export function outputChanges(older: Solved, newer: Solved, matches: readonly Match[]): SettingChange[] {
	return matches
		.filter(({kind}) => kind === 'output')
		.flatMap(match => {
			const before = outputOf(older, match.older);
			const after = outputOf(newer, match.newer);
			const common = {box: 'processor', about: match.newer, name: match.name} as const;
			const found: SettingChange[] = [];
			if (before.delayMs !== after.delayMs) {
				found.push({
					...common,
					setting: 'delay',
					unit: 'ms',
					...delayChange(older, newer, match, before.delayMs, after.delayMs),
				});
			}

			if (before.gainDb !== after.gainDb) {
				const values = {setting: 'gain', unit: 'dB', before: before.gainDb, after: after.gainDb} as const;
				if (before.gainDb === undefined || after.gainDb === undefined) {
					const side = before.gainDb === undefined ? 'older' : 'newer';
					found.push({
						...common,
						...values,
						parts: [],
						notSplit: `not set in the ${side} profile`,
						weight: 1,
					});
				} else {
					const change = after.gainDb - before.gainDb;
					const parts = gainParts(change, before.solved, after.solved);
					found.push({...common, ...values, change, parts, weight: Math.abs(change) / changeScale.dB});
				}
			}

			if (before.isInverted !== after.isInverted) {
				const word = (isInverted: boolean) => (isInverted ? 'inverted' : 'normal');
				found.push({
					...common,
					setting: 'polarity',
					unit: '',
					before: word(before.isInverted),
					after: word(after.isInverted),
					parts: [],
					notSplit: 'polarity is one or the other',
					weight: kindWeight.polarity,
				});
			}

			return found;
		});
}

function delayChange(
	older: Solved,
	newer: Solved,
	match: Match,
	before: number | undefined,
	after: number | undefined,
) {
	if (before === undefined || after === undefined) {
		const side = before === undefined ? 'older' : 'newer';
		return {before, after, parts: [], notSplit: `not set in the ${side} profile`, weight: 1};
	}

	const change = after - before;
	const weight = Math.abs(change) / changeScale.ms;
	const was = delaySide(older, match.older, before);
	const is = delaySide(newer, match.newer, after);
	if (!was || !is) {
		const parts: Part[] = [{cause: 'unexplained', amount: change}];
		return {before, after, change, parts, notSplit: 'several subs on one output, or no distance', weight};
	}

	return {before, after, change, sigma: Math.hypot(was.sigma, is.sigma), parts: timingParts(was, is), weight};
}
