import {formatNumber} from '../profile/units/decimalText.ts';
import type {SignalFile, SignalPlan} from '../study/playing/plan.ts';
import {tableLines} from './table.ts';
import {wrap} from './wrap.ts';

const inDbfs = (level: number) => `${formatNumber(level, 0)} dBFS`;

function content({what, spectrum, row}: SignalFile): string {
	if (what === 'count') return 'bursts';
	if (row) return `${row.map(hertz => formatNumber(hertz, Number.isInteger(hertz) ? 0 : 1)).join(', ')} Hz`;
	if (spectrum?.kind === 'pink')
		return `pink ${formatNumber(spectrum.fromHertz, 0)}–${formatNumber(spectrum.toHertz, 0)} Hz`;
	return spectrum ? `${formatNumber(spectrum.hertz, Number.isInteger(spectrum.hertz) ? 0 : 1)} Hz` : '';
}

/** The files that were written, what each is for, and what a weighted meter makes of them. */
export function signalLines(plan: SignalPlan, folder: string, width: number): string[] {
	const unplaced = plan.order?.unplaced ?? [];
	return [
		`Written to ${folder}: ${plan.files.length} files, 48 kHz, 24 bit. All but the rows of tones loop without a click.`,
		'',
		...tableLines(
			[
				{title: 'file', importance: 5},
				{title: 'sound', importance: 4},
				{title: 'RMS', importance: 3, align: 'right'},
				{title: 'C meter', importance: 2, align: 'right'},
				{title: 'A meter', importance: 1, align: 'right'},
			],
			plan.files.map(file => [
				file.file,
				content(file),
				inDbfs(file.levelDbfs),
				file.reads ? `${formatNumber(file.reads.C, 1)} dB` : '',
				file.reads ? `${formatNumber(file.reads.A, 1)} dB` : '',
			]),
			width,
		),
		'',
		...plan.files.flatMap(({file, use}) => wrap(use, width, `${file}  `)),
		'',
		...wrap(
			'0 dBFS is the RMS of a sine whose peaks reach full scale (AES17). At reference gain −30 dBFS reads 75 dB and −20 dBFS 85 dB at the seat (common practice, no source).',
			width,
		),
		...wrap(
			'Meter columns: how much a weighted meter reads above (+) or below (−) the true level of that file. Noise: read the mean over one loop, 5.5 s.',
			width,
		),
		...(unplaced.length > 0
			? wrap(
					`WAV files know no place for ${unplaced.join(', ')}: those channels come last, and a player may send them elsewhere. Check with layout-count.wav.`,
					width,
				)
			: []),
	];
}
