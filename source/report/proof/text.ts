import {listed} from '../../profile/names.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {
	Explanation,
	Finding,
	Mistake,
	ProofReading,
	ProofResult,
} from '../../study/calibration/proof/proofResult.ts';
import {remarkLines} from '../remarks.ts';
import {headOf, sentenceOf} from '../said/said.ts';
import type {Say} from '../said/say.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';

const outcomeTexts = {
	met: 'Proof met: every reading asked for was read and is where the settings should put it.',
	missed: 'Proof missed.',
	open: 'Proof open: nothing is missed, but not everything is read and judged.',
	none: 'No second round to hold against the predictions.',
} as const;

function signalWords({signal}: Pick<ProofReading, 'signal'>): string {
	return signal.kind === 'tone' ? `${formatNumber(signal.hertz, 0)} Hz` : 'noise';
}

/** How sure an explanation is, in words and as a share. */
export function trustText({trust, likelihood}: Explanation): string {
	if (trust === 'certain') return 'Certain';
	const percent = Math.round(100 * likelihood);
	const share = percent < 1 ? 'below 1 %' : `${percent} %`;
	return `${trust === 'likely' ? 'Likely' : 'Possible'}, ${share}`;
}

/** One finding: every explanation that fits, and the check that would confirm the first. */
export function findingLines({explanations}: Finding, width: number, say: Say): string[] {
	return explanations.flatMap((explanation, index) => {
		const texts = explanation.mistakes.map(mistake =>
			index === 0 ? sentenceOf(mistake, say) : `${slipHead(mistake, say)}.`,
		);
		const lead = index === 0 ? '  - ' : '    or: ';
		return wrap(`${trustText(explanation)}. ${texts.join(' ')}`, width, lead);
	});
}

/** A slip with its subject's name, without the check. */
export function slipHead(mistake: Mistake, say: Say): string {
	const names = listed(mistake.about.map(id => say.name(id)));
	const head = headOf(mistake, say);
	return head.includes(': ') ? head : `${names}: ${head}`;
}

/** A second round as text: the verdict, each reading against its prediction, what explains the misses, what is left. */
export function proofText(result: ProofResult, width: number, say: Say): string {
	const {readings, missing, masterShiftDb, findings, verdict} = result;
	const rows = readings.map(
		({name, seatName, predicted, read, residual, tolerance, verdict: one, ...rest}) => [
			name,
			seatName,
			signalWords(rest),
			formatNumber(predicted.value, 1),
			formatNumber(read.value, 1),
			formatSigned(residual, 1),
			`±${formatNumber(tolerance, 1)}`,
			one === 'again' ? 'read again' : one,
		],
	);
	const recorded = (result.recorded ?? []).map(({name, seatName, predicted, settled, ...rest}) => [
		name,
		seatName,
		signalWords(rest),
		formatNumber(predicted.value, 1),
		'recording',
		formatSigned(settled?.residualDb ?? 0, 1),
		'',
		'met',
	]);
	const plan = missing.map(({name, seatName, predicted, ...rest}) => [
		name,
		seatName,
		signalWords(rest),
		formatNumber(predicted.value, 1),
	]);
	const columns = [
		{title: 'source', importance: 10, leastCells: 10},
		{title: 'seat', importance: 4, leastCells: 8},
		{title: 'signal', importance: 5},
		{title: 'predicted', align: 'right', importance: 7},
		{title: 'read', align: 'right', importance: 6},
		{title: 'off', align: 'right', importance: 9},
		{title: 'allowed', align: 'right', importance: 3},
		{title: '', importance: 8},
	] as const;
	return [
		...wrap(outcomeTexts[verdict], width),
		...(masterShiftDb?.isMoved
			? wrap(`Taken out first: ${formatSigned(masterShiftDb.value, 1)} dB common to all.`, width)
			: []),
		...(rows.length + recorded.length > 0 ? ['', ...tableLines(columns, [...rows, ...recorded], width)] : []),
		...(findings.length > 0
			? ['', 'What explains it', ...findings.flatMap(finding => findingLines(finding, width, say))]
			: []),
		...(plan.length > 0 ? ['', 'Still to read, dB', ...tableLines(columns.slice(0, 4), plan, width)] : []),
		...remarkLines(result.remarks, width, say),
	].join('\n');
}
