import {subsOf} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';
import {formatNumber, formatSigned} from '../../../profile/units/decimalText.ts';
import {slipHead, trustText} from '../../../report/proof/text.ts';
import {sentenceOf} from '../../../report/said/said.ts';
import type {Say} from '../../../report/said/say.ts';
import {tableLines} from '../../../report/table.ts';
import {wrap} from '../../../report/wrap.ts';
import type {ProofPlanItem} from '../../../study/calibration/proof/planItem.ts';
import type {Finding, ProofReading, ProofResult} from '../../../study/calibration/proof/proofResult.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import {sayFor} from '../sayFor.ts';
import {openText} from './openText.ts';
import {planOf, proofOf} from './proofOf.ts';

const order: Readonly<Record<ProofReading['verdict'], number>> = {missed: 0, again: 1, met: 2};

/** The page of the stop Proof: what it is for, or verdict, likely slips, and every reading against its prediction. */
export function proofLines(profile: Profile, columns: number): ScreenLine[] {
	const put = (text: string, style?: ScreenLine['style'], sign = '') => paragraph(text, columns, style, sign);
	const plan = planOf(profile);
	if (plan.length === 0) {
		return [
			...put('Nothing to prove yet', 'strong'),
			...put(
				'Type the settings in and tick them at the stop Dial-in; then a second round shows whether they took.',
			),
		];
	}

	const closed = plan.filter(({taken, settled}) => taken === 0 && settled).length;
	const open = plan.filter(({taken, settled}) => taken === 0 && !settled).length;
	if (open === plan.length) {
		return [
			...put('Does it read what was predicted?', 'strong'),
			...put(
				`${plan.length} readings with the new settings in force. Each has a prediction; a forgotten entry, a wrong sign or two channels swapped show at once.`,
			),
			...put(
				'Enter begins; r records it instead, which closes the speakers, and the bass where it was recorded before; ] leaves it for another day.',
			),
		];
	}

	const result = proofOf(profile);
	return [
		...verdictLines(result, plan.length - open, plan.length, columns),
		...(closed > 0
			? put(
					`The recording made with these settings closes ${closed === 1 ? 'one of them' : `${closed} of them`}: ${closedWords(profile, plan)}.`,
					'good',
					'✓ ',
				)
			: []),
		...result.findings.flatMap(finding => mistakeLines(finding, result, sayFor(profile), columns)),
		{text: ''},
		...readingTable(result.readings, columns),
		...result.remarks
			.filter(({kind, code}) => kind !== 'note' && code !== 'proof-left-out')
			.flatMap(remark => put(sentenceOf(remark, sayFor(profile)), 'doubt', '? ')),
	];
}

/** What a recording has closed, in words. */
function closedWords(profile: Profile, plan: readonly ProofPlanItem[]): string {
	const closed = plan.filter(({taken, settled}) => taken === 0 && settled);
	const subs = new Set<string>(subsOf(profile).map(({id}) => id));
	const isBass = ({source}: ProofPlanItem) => source.some(id => subs.has(id));
	const bass = 'the bass, as the parts recorded before predict it';
	const levels = 'levels of the speakers against each other';
	if (!closed.some(isBass)) return levels;
	return closed.every(isBass) ? bass : `${levels}, and ${bass}`;
}

function paragraph(text: string, columns: number, style?: ScreenLine['style'], sign = ''): ScreenLine[] {
	return wrap(text, columns, `  ${sign}`).map(line => ({text: line, style}));
}

function verdictLines(result: ProofResult, taken: number, count: number, columns: number): ScreenLine[] {
	const {verdict, readings, unjudged, masterShiftDb} = result;
	const missed = [...new Set(readings.filter(reading => reading.verdict === 'missed').map(({name}) => name))];
	const again = readings.filter(reading => reading.verdict === 'again').length;
	const words: ScreenLine[] =
		verdict === 'missed'
			? paragraph(`Missed: ${missed.join('; ')}`, columns, 'trouble', '! ')
			: verdict === 'open'
				? paragraph(
						`Open: ${openText(count - taken, again, unjudged.length)}; nothing is missed so far`,
						columns,
						'strong',
					)
				: paragraph(
						`Met: all ${count} ${readings.length < count ? 'read or recorded' : 'read'}, each within its limit`,
						columns,
						'good',
						'✓ ',
					);
	const shift = masterShiftDb?.isMoved
		? paragraph(
				`The speakers read ${formatSigned(masterShiftDb.value, 1)} dB: the master volume stands elsewhere than in the first round. Taken out.`,
				columns,
			)
		: [];
	const next =
		taken < count
			? `Enter goes on: ${count - taken} to read.`
			: again > 0
				? 'Put the meter down anew; Enter goes to what is to be read again.'
				: verdict === 'missed'
					? 'Mend it; e then reads the worst again, in its place. Enter goes on to the last stop.'
					: 'Enter goes on to the last stop; e reads again.';
	return [...words, ...shift, ...paragraph(next, columns, 'quiet')];
}

/** What may have gone wrong, likeliest first, each with the check that settles it. */
function mistakeLines(
	{explanations, readings}: Finding,
	result: ProofResult,
	say: Say,
	columns: number,
): ScreenLine[] {
	const concerned = result.readings.filter(({key}) => readings.includes(key));
	const missed = concerned.filter(({verdict}) => verdict === 'missed');
	const names = [...new Set((missed.length > 0 ? missed : concerned).map(({name}) => name))];
	return [
		{text: ''},
		...paragraph(`${names.join('; ')}:`, columns, 'strong'),
		...explanations.flatMap((explanation, index) =>
			paragraph(
				`${trustText(explanation)}: ${explanation.mistakes
					.map(mistake => (index === 0 ? sentenceOf(mistake, say) : `${slipHead(mistake, say)}.`))
					.join(' And ')}`,
				columns,
				explanation.trust === 'possible' ? undefined : 'doubt',
				'▸ ',
			),
		),
	];
}

function readingTable(readings: readonly ProofReading[], columns: number): ScreenLine[] {
	const sorted = readings.toSorted(
		(a, b) => order[a.verdict] - order[b.verdict] || Math.abs(b.residual) - Math.abs(a.residual),
	);
	const rows = sorted.map(({name, seatName, signal, predicted, read, residual, verdict}) => [
		signal.kind === 'tone' ? `${name}, ${signal.hertz} Hz` : name,
		seatName,
		formatNumber(predicted.value, 1),
		formatNumber(read.value, 1),
		formatSigned(residual, 1),
		verdict === 'again' ? 'read again' : verdict,
	]);
	const table = tableLines(
		[
			{title: 'reading', importance: 10, leastCells: 10},
			{title: 'seat', importance: 1},
			{title: 'predicted', align: 'right', importance: 6},
			{title: 'read', align: 'right', importance: 7},
			{title: 'off by', align: 'right', importance: 9},
			{title: 'verdict', importance: 8},
		],
		rows,
		columns - 2,
	);
	return table.map(
		(text, index): ScreenLine => ({text: `  ${text}`, style: index === 0 ? 'quiet' : undefined}),
	);
}
