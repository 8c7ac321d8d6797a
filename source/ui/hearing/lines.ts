import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import {recordedStateLines} from '../../report/bass/recordedState.ts';
import {playingLines, seatLines} from '../../report/hearing/tables.ts';
import {allFindingLines, blendLines, isVerdict} from '../../report/hearing/text.ts';
import {sentenceOf} from '../../report/said/said.ts';
import {sayIn} from '../../report/said/say.ts';
import {wrap} from '../../report/wrap.ts';
import type {ScreenLine} from '../parts/lines.tsx';
import type {HearingState} from './state.ts';

const text = (line: string, style?: ScreenLine['style']): ScreenLine => ({text: line, style});

const barCells = 24;
const stepWords = {
	finding: 'looking for playings',
	cutting: 'cutting sweeps',
	judging: 'judging lines',
} as const;

/** How far the recording is that is being heard. */
export function progressLines({waiting, progress}: HearingState, columns: number): ScreenLine[] {
	const path = waiting[0];
	if (path === undefined) return [];
	if (path === '') return [text('  One moment …', 'quiet')];
	const share = progress ? progress.done / Math.max(1, progress.of) : 0;
	const full = Math.round(barCells * Math.min(1, share));
	const name = path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
	const what = progress ? `${stepWords[progress.step]}, ${Math.round(100 * share)} %` : 'opening';
	const more = waiting.length > 1 ? `, ${waiting.length - 1} more to hear` : '';
	return wrap(`${name}: ${what}${more}`, columns, '  ').map((line, index) =>
		index === 0 && columns >= 60
			? {...text(line, 'value'), after: `  ${'█'.repeat(full)}${'·'.repeat(barCells - full)}`}
			: text(line, 'value'),
	);
}

/** The watched folder with what lies in it, and the path that is being typed. */
export function arriveLines(state: HearingState, columns: number, now: Date): ScreenLine[] {
	const {folder, arrived, isFolderMissing = false, cursor, typed, waiting, report} = state;
	const watched = isFolderMissing
		? `${folder} is not there or cannot be opened; it is looked for again and again.`
		: `Watching ${folder}: what arrives there is heard at once.`;
	return [
		text('Which recording?', 'strong'),
		...wrap(watched, columns, '  ').map(line => text(line, isFolderMissing ? 'trouble' : 'quiet')),
		...progressLines(state, columns),
		...(report
			? wrap(
					`Heard so far: ${report.rows.length === 1 ? 'one playing' : `${report.rows.length} playings`}. Tab shows them.`,
					columns,
					'  ',
				).map(line => text(line, 'good'))
			: []),
		text(''),
		...(arrived.length === 0 && !isFolderMissing ? [text('  Nothing lies there yet.', 'quiet')] : []),
		...arrived.map(({name, bytes, changedMs}, index): ScreenLine => {
			const line = `${index === cursor && typed === '' ? '›' : ' '} ${name}`;
			return {
				text: line,
				...(index === cursor && typed === '' && {style: 'value' as const}),
				after: `  ${formatNumber(bytes / 1e6, 1)} MB, ${ageText(now.getTime() - changedMs)}`,
			};
		}),
		text(''),
		text(
			typed === ''
				? waiting.length > 0
					? '  Esc stops it. Or type the path of another recording, or of a folder to watch.'
					: '  Or type the path of a recording, or of a folder to watch.'
				: `  Path  ${typed}▌`,
			typed === '' ? 'quiet' : 'value',
		),
	];
}

function ageText(ms: number): string {
	const minutes = Math.max(0, Math.round(ms / 60_000));
	if (minutes < 1) return 'just now';
	if (minutes < 120) return `${minutes} min ago`;
	const hours = Math.round(minutes / 60);
	return hours < 48 ? `${hours} h ago` : `${Math.round(hours / 24)} days ago`;
}

/** Playings as they are understood, to accept or to name otherwise. */
export function playingsLines(profile: Profile, state: HearingState, columns: number): ScreenLine[] {
	const {report, cursor} = state;
	if (!report) return [];
	const say = sayIn(profile, profile.lengthUnit);
	const table = playingLines(profile, report.rows, say, columns, {cursor});
	const trouble = report.files.flatMap(({name, findings}) =>
		findings.flatMap(each => wrap(`${name}: ${sentenceOf(each, say)}`, columns, '  ')),
	);
	const own = report.rows[cursor];
	const about = own ? [...own.playing.findings, ...own.findings] : [];
	return [
		text(state.waiting.length > 0 ? 'Heard so far' : 'Is this what was recorded?', 'strong'),
		...progressLines(state, columns),
		...trouble.map(line => text(line, 'trouble')),
		...marked(table),
		text(''),
		...about.flatMap(each => wrap(sentenceOf(each, say), columns, '  ')).map(line => text(line, 'doubt')),
		...takenLines(state, columns),
	];
}

/** What Enter takes, in one line. */
function takenLines({report, waiting}: HearingState, columns: number): ScreenLine[] {
	if (!report || waiting.length > 0) return [];
	const {recordings, responses} = report.taken;
	const lines = responses.filter(({part}) => (part ?? 'all') === 'all').length;
	const apart = report.rounds.filter(({isApart}) => isApart).length;
	const line =
		recordings.length === 0
			? 'Nothing sound is left to take: play it again, as the sentences say.'
			: `Enter takes ${recordings.length === 1 ? 'one playing' : `${recordings.length} playings`}, ${lines} lines${apart > 0 ? `; speakers and subs told apart at ${apart === 1 ? 'one seat' : `${apart} seats`}` : ''}.`;
	return wrap(line, columns, '  ').map(each => text(each, recordings.length === 0 ? 'trouble' : 'good'));
}

/** Every line with its verdict, seat by seat; what comes late is asked about. */
export function heardLinesOf(profile: Profile, state: HearingState, columns: number): ScreenLine[] {
	const {report, cursor, leftOut, latencies} = state;
	if (!report) return [];
	const say = sayIn(profile, profile.lengthUnit);
	let first = 0;
	const tables = report.rounds.flatMap(round => {
		const at = cursor - first;
		first += round.base.playing.lines.length;
		const out = leftOut.flatMap(each =>
			each.startsWith(`${round.seat} `) ? [each.slice(round.seat.length + 1)] : [],
		);
		return marked(seatLines(profile, round, report.findings, say, columns, {cursor: at, leftOut: out}));
	});
	const late = report.offers.latencies.flatMap(({channel, ms}) =>
		wrap(
			`${nameOf(profile, channel)}: ${formatNumber(ms, 1)} ms more than its distance: a wireless link or processing. ${latencies.includes(channel) ? 'Taken over as its latency.' : 'Taken over as its latency? t on its row.'}`,
			columns,
			'? ',
		).map(line => text(line, 'doubt')),
	);
	return [
		...(report.rounds.length === 0 ? [text('No playing of it can be used.', 'trouble')] : tables),
		...late,
		...(report.blend ? blendLines(profile, report.blend, columns).map(line => text(line, 'value')) : []),
		...(isVerdict(report.state)
			? recordedStateLines(profile, report.state, columns).map(line => text(line, 'value'))
			: []),
		...allFindingLines(report, say, columns).map(line => text(line, 'quiet')),
		...takenLines(state, columns),
	];
}

const marked = (lines: readonly string[]): ScreenLine[] =>
	lines.map(line => text(line, line.startsWith('›') ? 'value' : undefined));
