import type {Profile, TapeReading} from '../../../profile/types.ts';

export function roomLimitMetres(_profile: Profile): number | undefined {
	return undefined;
}

export function tapeDoubt(_profile: Profile, _reading: TapeReading): string | undefined {
	return undefined;
}
