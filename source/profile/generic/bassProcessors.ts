import type {BassProcessor} from '../types.ts';

// Steps, ranges and latency that such boxes usually have: common practice, no source.
const common = {
	outputs: ['A', 'B', 'C', 'D'],
	delay: {stepMs: 0.02, minimumMs: 0, maximumMs: 80},
	gain: {stepDb: 0.5, minimumDb: -40, maximumDb: 12},
	invertsOutputs: true,
} as const;

/** Bass processors that stand for many. */
export const genericBassProcessors = {
	direct: {...common, outputs: [...common.outputs], name: 'Without latency', latencyMs: 0},
	digital: {...common, outputs: [...common.outputs], name: 'Digital, with latency', latencyMs: 4},
} satisfies Readonly<Record<string, BassProcessor>>;

export type GenericBassProcessor = keyof typeof genericBassProcessors;
export const genericBassProcessorNames = Object.keys(genericBassProcessors) as GenericBassProcessor[];
