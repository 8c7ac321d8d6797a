import type {BassProcessor} from '../types.ts';

// Invented, as the receivers are: Kit corrects steps, range and latency to what the real box shows.
const common = {
	outputs: ['A', 'B', 'C', 'D'],
	delay: {stepMs: 0.05, minimumMs: 0, maximumMs: 100},
	gain: {stepDb: 0.5, minimumDb: -30, maximumDb: 6},
	invertsOutputs: true,
} as const;

/** Bass processors that stand for many. */
export const genericBassProcessors = {
	direct: {...common, outputs: [...common.outputs], name: 'Without latency', latencyMs: 0},
	digital: {...common, outputs: [...common.outputs], name: 'Digital, with latency', latencyMs: 4},
} satisfies Readonly<Record<string, BassProcessor>>;

export type GenericBassProcessor = keyof typeof genericBassProcessors;
export const genericBassProcessorNames = Object.keys(genericBassProcessors) as GenericBassProcessor[];
