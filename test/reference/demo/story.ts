import type {Profile} from '../../../source/profile/types.ts';
import type {Truth} from './truth.ts';

/** One year of an invented room: how it really is, and what is written down of it besides readings. */
export type Story = {
	readonly truth: Truth;
	readonly name: string;
	readonly date: string;
	readonly decidedAt: string;
	readonly note: string;
	readonly room: Profile['room'];
	readonly screen: NonNullable<Profile['screen']>;
	readonly seatNames: Readonly<Record<string, string>>;
	readonly subNames: Readonly<Record<string, string>>;
	readonly receiver: NonNullable<Profile['receiver']>;
	readonly bassProcessor?: NonNullable<Profile['bassProcessor']>;
	readonly wiring?: NonNullable<Profile['wiring']>;
	/** Questions of the walk whose answer leaves no other trace, so that the finished round shows none open. */
	readonly answered?: readonly string[];
	/** For the random numbers. */
	readonly seed: number;
};
