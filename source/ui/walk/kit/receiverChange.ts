import type {Profile, Receiver} from '../../../profile/types.ts';

/** A change of the receiver that the profile has. */
export function withReceiver(profile: Profile, change: Partial<Receiver>): Profile {
	return {...profile, receiver: {...profile.receiver!, ...change}};
}
