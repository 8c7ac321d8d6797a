import type {LatencyPart} from '../../../profile/ask/latency.ts';
import type {Uncertain} from '../../../science/numeric/uncertain.ts';
import type {Dialled, DistanceResult} from '../result.ts';
import type {TimingFinding} from './facts.ts';

/** When the sound of one speaker or sub reaches the seat, ms after it left the receiver. */
export type Arrival = Uncertain & {
	readonly id: string;
	readonly distance: DistanceResult;
	readonly latencies: readonly LatencyPart[];
};

export type TimingResult = {
	readonly channels: ReadonlyMap<string, Dialled & {readonly kind: 'delay' | 'distance'}>;
	readonly outputs: ReadonlyMap<string, Dialled>;
	readonly worstErrorMs: number;
	readonly fits: boolean;
	readonly remarks: readonly TimingFinding[];
};
