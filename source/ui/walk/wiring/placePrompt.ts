import type {Profile} from '../../../profile/types.ts';
import {formatLength, readLength} from '../../../profile/units/length.ts';
import {lengthUnitOf, unitWords} from '../lengthUnits.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {valuePrompt} from '../prompt/single.ts';
import type {Reading} from '../prompt/taken.ts';

type OutletPlace = {
	readonly leftWallMetres: number;
	readonly frontWallMetres: number;
	readonly heightMetres?: number;
};
type PlaceReading = {readonly place: OutletPlace; readonly readAs: string};

/** Where the receiver stands; a bass processor is taken to stand with it. From it the ways of cables are estimated. */
export function placePrompt(profile: Profile): Prompt<Profile> {
	const unit = lengthUnitOf(profile);
	const show = (metres: number) => formatLength(metres, unit);
	const placed = profile.wiring?.equipment?.find(({id}) => id === 'receiver');
	return valuePrompt<Profile, PlaceReading>({
		id: 'wiring:place',
		stop: 'wiring',
		question: 'Where does the receiver stand?',
		about: `From the left wall x from the screen wall x height, such as ${show(1.9)} x ${show(0.4)}; the height may be left out.`,
		explain: 'With the places of the speakers from the tape it gives an estimate of every cable’s way.',
		unit: `${unitWords[unit]}, x between`,
		shown:
			placed &&
			[placed.leftWallMetres, placed.frontWallMetres, placed.heightMetres]
				.flatMap(metres => (metres === undefined ? [] : [show(metres)]))
				.join(' x '),
		read: text => readPlace(text, unit),
		put: (subject, {place}) => withPlace(subject, place),
	});
}

/** Reads two or three lengths with an x between. */
export function readPlace(text: string, unit: ReturnType<typeof lengthUnitOf>): Reading<PlaceReading> {
	const parts = text.split(/\s*[x×;]\s*/i);
	if (parts.length < 2 || parts.length > 3)
		return {kind: 'no', why: 'Two lengths with an x between: from the left wall x from the screen wall.'};
	const lengths: number[] = [];
	for (const part of parts) {
		const reading = readLength(part, unit);
		if (reading.kind === 'no') return reading;
		if (reading.kind === 'ask')
			return {kind: 'no', why: `“${part}” can be read in two ways. Type it with its unit.`};
		lengths.push(reading.metres);
	}

	const [leftWallMetres = 0, frontWallMetres = 0, heightMetres] = lengths;
	const readAs = lengths.map(metres => formatLength(metres, unit)).join(' x ');
	const place = {leftWallMetres, frontWallMetres, ...(heightMetres !== undefined && {heightMetres})};
	return {kind: 'ok', place, readAs};
}

function withPlace(profile: Profile, place: OutletPlace): Profile {
	const others = (profile.wiring?.equipment ?? []).filter(({id}) => id !== 'receiver');
	const isProcessorPlaced = others.some(({id}) => id === 'processor');
	const equipment = [
		{id: 'receiver', ...place},
		...(profile.bassProcessor && !isProcessorPlaced ? [{id: 'processor', ...place}] : []),
		...others,
	];
	return {...profile, wiring: {...profile.wiring, equipment}};
}
