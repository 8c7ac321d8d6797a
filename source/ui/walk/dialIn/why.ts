import type {Profile} from '../../../profile/types.ts';
import {formatNumber} from '../../../profile/units/decimalText.ts';
import {type Sayable, saidParts} from '../../../report/said/said.ts';
import {wrap} from '../../../report/wrap.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import {crossoversOf} from '../costlyParts.ts';
import {sayFor} from '../sayFor.ts';
import {solutionOf} from '../solution.ts';
import type {BoxRow} from './pages.ts';

const timingCodes = ['timing-reason', 'distance-from-network', 'distance-from-recording', 'blend-applied'];
const levelCodes = ['trim-reason', 'weighting-corrected', 'background-corrected'];
/** Codes of what tells how a value came about, by the label of the value. */
const reasonCodes: Readonly<Record<string, readonly string[]>> = {
	Distance: timingCodes,
	Delay: timingCodes,
	Polarity: timingCodes,
	Trim: levelCodes,
	Gain: levelCodes,
};

/** Lines below the value's own. */
const mostReasonLines = 4;

/** How a value came about: old and new, then the reasons, in a few lines. */
export function whyLines(profile: Profile, row: BoxRow, columns: number): ScreenLine[] {
	const {itemId, label, value, was, title, isChanged} = row;
	const change = was === undefined ? `${value}, ${isChanged ? 'new' : 'as it stands'}` : `${was} → ${value}`;
	const say = sayFor(profile);
	const said = reasonsOf(profile, itemId, label).map(reason => saidParts(reason, say).said);
	const text =
		said.length > 0 ? said.join(' ') : 'It follows from what the receiver takes; no reading moves it.';
	const head = `${title}, ${label.toLowerCase()}: ${change}${sigmaText(profile, itemId, label)}`;
	return [
		...wrap(head, columns, '  ').map((line): ScreenLine => ({text: line, style: 'strong'})),
		...wrap(text.charAt(0).toUpperCase() + text.slice(1), columns, '  ')
			.slice(0, mostReasonLines)
			.map((line): ScreenLine => ({text: line})),
	];
}

/** Codes of what makes a distance look like a slip though it is meant. */
const strikingCodes = ['entry-holds-latency', 'distances-shifted-together'];

/** One sentence where the value under the cursor is far from what the tape showed, and meant so. */
export function strikingLines(profile: Profile, {itemId, label}: BoxRow, columns: number): ScreenLine[] {
	if (label !== 'Distance') return [];
	const {channels, remarks} = solutionOf(profile);
	const all = [...(channels.find(({id}) => id === itemId)?.remarks ?? []), ...remarks];
	const [striking] = strikingCodes.flatMap(wanted =>
		all.filter(
			({code, kind, about}) =>
				code === wanted && kind !== 'note' && (about.length === 0 || about.includes(itemId)),
		),
	);
	if (!striking) return [];
	const {said} = saidParts(striking, sayFor(profile));
	const text = `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
	return wrap(text, columns, '  · ').map((line): ScreenLine => ({text: line, style: 'quiet'}));
}

function reasonsOf(profile: Profile, itemId: string, label: string): Sayable[] {
	if (label === 'Crossover') {
		const channels: ReadonlyMap<string, {readonly reasons: readonly Sayable[]}> =
			crossoversOf(profile).channels;
		return [...(channels.get(itemId)?.reasons ?? [])];
	}

	const {channels, outputs, subs} = solutionOf(profile);
	const own = [...channels, ...outputs].find(({id}) => id === itemId);
	const fed = subs.filter(({output, fedBy}) => output === itemId || fedBy === itemId);
	const remarks = [own, ...fed].flatMap(one => one?.remarks ?? []);
	return remarks.filter(({code}) => reasonCodes[label]?.includes(code));
}

function sigmaText(profile: Profile, itemId: string, label: string): string {
	const {channels, outputs} = solutionOf(profile);
	const dialled =
		label === 'Trim'
			? channels.find(({id}) => id === itemId)?.trimDb
			: label === 'Gain'
				? outputs.find(({id}) => id === itemId)?.gainDb
				: undefined;
	return dialled ? ` (± ${formatNumber(dialled.sigma, 1)} dB)` : '';
}
