import type {MeterReading, Profile} from '../../../profile/types.ts';

export function meterDoubt(_profile: Profile, _reading: MeterReading): string | undefined {
	return undefined;
}
