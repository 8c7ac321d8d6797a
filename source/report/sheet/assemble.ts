import type {Profile, SettingsSet} from '../../profile/types.ts';
import {conductorText} from '../../profile/units/conductor.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {Solution} from '../../study/calibration/result.ts';
import type {SheetData} from '../../study/comparison/sheetData.ts';
import type {WiringResult} from '../../study/wiring/result.ts';
import {masterSentence} from '../masterSentence.ts';
import {referenceSeatText} from '../referenceSeatText.ts';
import {sentenceOf} from '../said/said.ts';
import {sayIn} from '../said/say.ts';
import {carriedSentences} from './carriedSentences.ts';
import {sheetCautions} from './cautions.ts';
import type {CableRow, SheetContent} from './content.ts';
import {sheetCurves} from './curveOf.ts';
import {rowsOfSet, rowsOfSolution} from './dialRows.ts';
import {placeRows} from './placeRows.ts';

/** Puts the page together as words. */
export function assembleSheet(input: SheetData): SheetContent {
	const {profile, solution, set, standing} = input;
	const rows = set ? rowsOfSet(set, profile) : rowsOfSolution(solution, profile);
	const takesDelays = set
		? Object.values(set.channels).some(({delayMs}) => delayMs !== undefined)
		: solution.channels.some(({timing}) => timing?.kind === 'delay');
	return {
		title: profile.name,
		date: profile.date,
		origin: set
			? `Settings${set.name ? ` “${set.name}”` : ''} as kept${set.decidedAt ? ` on ${set.decidedAt.slice(0, 10)}` : ''}`
			: isMeasured(solution)
				? 'Settings as computed from the readings; not yet kept as dialled in'
				: 'Nothing to type in yet but the crossovers that data sheets give',
		warnings: warningsOf(input),
		timingHeading: takesDelays ? 'Delay' : 'Distance to enter',
		...rows,
		afterDialling: afterDialling(solution, set),
		places: placeRows(profile, standing),
		cables: input.wiring.cables
			// A cable that is only proposed and has no length says nothing that the channel does not.
			.filter(({origin, cutMetres}) => origin === 'entered' || cutMetres !== undefined)
			.map(cable => cableRow(cable, profile)),
		response: sheetCurves(input)?.text ?? '',
		planned: carriedSentences(input),
		conditions: conditionsOf(profile, solution),
		cautions: sheetCautions,
	};
}

/** Whether readings stand behind what is computed: a delay, distance or trim. */
const isMeasured = ({channels}: Solution) =>
	channels.some(({timing, trimDb}) => timing !== undefined || trimDb !== undefined);

function warningsOf({profile, solution, set, isStale}: SheetData): string[] {
	const say = sayIn(profile, profile.lengthUnit);
	const problems = solution.remarks.filter(({kind}) => kind === 'problem');
	const warnings = set ? [] : problems.map(problem => sentenceOf(problem, say));
	if (set && isStale) {
		warnings.unshift(
			'These settings were kept before the latest readings. Dial in again, or print this page after keeping the new ones.',
		);
	}

	return warnings;
}

/** What is dialled in besides the channels: the low-pass of the LFE channel, and where the master volume stands. */
function afterDialling(solution: Solution, set: SettingsSet | undefined): string[] {
	const lowPassHertz = set ? set.lfeLowPassHertz : solution.lfeLowPassHertz;
	return [
		...(lowPassHertz === undefined
			? []
			: [`Low-pass for the LFE channel: ${formatNumber(lowPassHertz, 0)} Hz`]),
		...(set?.masterVolumeDb === undefined
			? []
			: [`Master volume while measuring: ${formatSigned(set.masterVolumeDb, 1)} dB`]),
		...(set ? [] : [masterSentence(solution) ?? []].flat()),
	];
}

function cableRow(cable: WiringResult['cables'][number], profile: Profile): CableRow {
	const conductor = cable.conductor ?? cable.needs;
	return {
		// A label made from the ends would only repeat the next two columns.
		label: cable.label === `${cable.from} → ${cable.to}` ? readableEnd(cable) : cable.label,
		from: cable.from,
		to: cable.to,
		length: cable.cutMetres === undefined ? '' : formatLength(cable.cutMetres, profile.lengthUnit ?? 'm'),
		conductor: conductor ? conductorText(conductor) : '',
	};
}

function conditionsOf(profile: Profile, solution: Solution): string[] {
	const {air, kit, target} = profile;
	const seat = profile.seats.find(({id}) => id === solution.seat);
	const conditions = [
		referenceSeatText(seat?.name ?? solution.seat),
		`Target: ${formatNumber(target?.levelDb ?? 75, 1)} dB at the seat`,
		`Speed of sound: ${solution.speedOfSound.metresPerSecond.toFixed(1)} m/s (${solution.speedOfSound.formula})`,
	];
	if (air?.temperatureCelsius !== undefined) {
		const humidity =
			air.humidityPercent === undefined ? '' : `, ${formatNumber(air.humidityPercent, 0)} % humidity`;
		conditions.push(`Air: ${formatNumber(air.temperatureCelsius, 1)} °C${humidity}`);
	}

	if (kit?.meterWeighting) conditions.push(`Meter: ${kit.meterWeighting} weighting`);
	return conditions;
}

/** What the cable leads to: the far box, such as FL or sub1. */
function readableEnd({to}: {readonly to: string}): string {
	return to.slice(0, to.indexOf('/'));
}
