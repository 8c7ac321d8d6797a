import type {Profile} from '../../../profile/types.ts';
import {formatNumber} from '../../../profile/units/decimalText.ts';
import {readNumber} from '../../../profile/units/number.ts';
import {readTemperature} from '../../../profile/units/temperature.ts';
import {lengthUnitOf} from '../lengthUnits.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {valuePrompt} from '../prompt/single.ts';
import type {Stop} from '../stop.ts';
import {tapePrompt} from '../tape/tapePrompt.ts';
import {ceilingPrompts} from './ceiling.ts';
import {seatPrompts} from './seats.ts';

const plan: readonly string[] = [
	'        screen wall',
	'      ┌─────────────┐',
	' left │      ▲      │ right',
	'      │     seat    │',
	'      └─────────────┘',
	'         back wall',
];

/** Questions about the room and its air. None of them is needed for delays and trims, so all may wait. */
export function roomPrompts(profile: Profile): Prompt<Profile>[] {
	return [
		tapePrompt(profile, {
			id: 'room:width',
			stop: 'room',
			from: 'wall:left',
			to: 'wall:right',
			question: 'Width of the room',
			about: 'Left wall to right wall, facing the screen.',
			explain: 'With width and length, a reading that cannot fit the room is caught at once.',
			drawing: plan,
		}),
		tapePrompt(profile, {
			id: 'room:length',
			stop: 'room',
			from: 'wall:front',
			to: 'wall:back',
			question: 'Length of the room',
			about: 'Screen wall to back wall.',
			explain: 'Measured like the width; a second reading makes both better.',
			drawing: plan,
		}),
		...ceilingPrompts(profile),
		...airPrompts(profile),
		...seatPrompts(profile),
	];
}

/** Air in the room: the speed of sound hangs on its temperature. */
function airPrompts(profile: Profile): Prompt<Profile>[] {
	const {temperatureCelsius, humidityPercent} = profile.air ?? {};
	const isFahrenheit = ['ft', 'ft-in'].includes(lengthUnitOf(profile));
	return [
		valuePrompt<Profile, {celsius: number; readAs: string}>({
			id: 'room:temperature',
			stop: 'room',
			question: 'Temperature in the room',
			about: 'Where you sit, while measuring.',
			explain: isFahrenheit
				? 'Sound runs 1.1 ft/s faster for each degree. 68 °F is taken where nothing is typed; 20C works too.'
				: 'Sound runs 0.6 m/s faster for each degree. 20 °C is taken where nothing is typed; 68F works too.',
			unit: isFahrenheit ? '°F' : '°C',
			shown:
				temperatureCelsius === undefined ? undefined : shownTemperature(temperatureCelsius, isFahrenheit),
			read: text => readTemperature(text, isFahrenheit ? 'F' : 'C'),
			put: (subject, {celsius}) => ({...subject, air: {...subject.air, temperatureCelsius: celsius}}),
		}),
		valuePrompt<Profile, {value: number; readAs: string}>({
			id: 'room:humidity',
			stop: 'room',
			question: 'Humidity in the room',
			about: 'From the hygrometer, if there is one.',
			explain: 'It changes the speed of sound by a few parts in a thousand at most.',
			unit: '%',
			shown: humidityPercent === undefined ? undefined : `${humidityPercent} %`,
			read: text => readNumber(text, {minimum: 0, maximum: 100, unit: '%'}),
			put: (subject, {value}) => ({...subject, air: {...subject.air, humidityPercent: value}}),
		}),
	];
}

/** Degrees as the thermometer of the same country as the tape shows them. */
function shownTemperature(celsius: number, isFahrenheit: boolean): string {
	return isFahrenheit ? `${formatNumber(celsius * 1.8 + 32, 0)} °F` : `${celsius} °C`;
}

/** The room, its air and its seats. */
export const roomStop = {
	id: 'room',
	name: 'Room',
	prompts: roomPrompts,
	after: 'tape',
} as const satisfies Stop<never>;
