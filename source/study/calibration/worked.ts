import type {BlendWish} from './blend/blendResult.ts';
import type {Polarities} from './blend/polarities.ts';
import type {AllLevels} from './levels/allLevels.ts';
import type {TrimResult} from './levels/trims.ts';
import type {Arrivals} from './timing/arrivals.ts';
import type {TimingResult} from './timing/result.ts';

/** What was worked out on the bench, on its way to a solution. */
export type Worked = Arrivals & {
	/** What the blend has verified, on top of what distances give; absent where that is nothing. */
	readonly wish: BlendWish | undefined;
	readonly polarity: Polarities;
	readonly timed: TimingResult;
	readonly levels: AllLevels;
	/** Absent where nothing was metered. */
	readonly trimmed: TrimResult | undefined;
};
