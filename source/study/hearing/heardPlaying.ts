import type {OnsetFound} from './arrivals.ts';
import type {Clarity} from './clarity.ts';
import type {OctaveDecay} from './decay.ts';
import type {HearingFinding} from './facts.ts';
import type {Impulse} from './impulses.ts';
import type {PolarityFound} from './polarity.ts';
import type {HeardResponse} from './responses.ts';
import type {PlayedRound} from './round.ts';

/** What one channel's sweep says of its line at one place. */
export type HeardLine = {
	/** Channel of the file. */
	readonly channel: string;
	readonly isSub: boolean;
	/** First sound against the first channel's, ms; absent where the line is silent. */
	readonly delayMs?: number;
	readonly sigmaMs?: number;
	readonly onset?: OnsetFound;
	/** Of a main line. */
	readonly polarity?: PolarityFound;
	/** Level of the meter's bands, dB re the file: 355 to 2818 Hz for mains, 28.2 to 112.2 Hz of every line. */
	readonly levelDb?: number;
	readonly bassLevelDb: number;
	/** How much the noise before the first sound lies below the strongest, dB. */
	readonly noiseBelowDb: number;
	readonly decays: readonly OctaveDecay[];
	readonly clarity?: Clarity;
	/** Against the first channel's first sound; zero above the highest frequency of the sweep. */
	readonly response: HeardResponse;
	readonly upToHertz: number;
	readonly impulse: Impulse;
	/** The response that reaches above 1 kHz: of the same sweep, or in a bass round of the soft pass. */
	readonly direct: Impulse;
};

/** One playing of a round as it was recorded. */
export type HeardPlaying = {
	/** Where the file began, seconds of the recording. */
	readonly atSeconds: number;
	readonly round: PlayedRound;
	/** How much faster than the player's the recorder's clock ran, ppm. */
	readonly clockPpm: number;
	readonly lines: readonly HeardLine[];
	/** Everything that sounded, by its place in the file, in the order of time. */
	readonly impulses: readonly Impulse[];
	readonly peak: number;
	readonly findings: readonly HearingFinding[];
};
