import type {Profile} from '../types.ts';

/**
How conductors are sold where the profile's owner buys them: as the kit says; else as a cable of theirs is marked; else as
goes with the tape, by gauge beside feet. The unit that lengths are shown in has no say.
*/
export function wireSystemOf({kit, wiring}: Pick<Profile, 'kit' | 'wiring'>): 'awg' | 'metric' {
	if (kit?.wireSystem) return kit.wireSystem;
	for (const {awg, areaSquareMillimetres} of wiring?.connections ?? []) {
		if (areaSquareMillimetres !== undefined) return 'metric';
		if (awg !== undefined) return 'awg';
	}

	return kit?.tapeShownIn?.startsWith('ft') ? 'awg' : 'metric';
}
