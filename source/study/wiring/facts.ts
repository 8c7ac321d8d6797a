import type {FindingOf, NoFacts} from '../../profile/finding.ts';
import type {Conductor} from '../../science/acoustics/cable.ts';

type Load = {
	readonly watts: number;
	/** Share of the rating that is used; 1 is full. */
	readonly share: number;
	readonly limit: PlateRating;
};

/** A rating as it stands on the plate. */
export type PlateRating = {readonly value: number; readonly unit: 'A' | 'W' | 'VA'};

/** What findings on the wiring are said with. Cables by id, ends as `box/terminal`. */
export type WiringFacts = {
	'line-split': {readonly cables: readonly string[]};
	'terminal-taken': {readonly cables: readonly string[]};
	'cable-missing': {readonly from: string; readonly to: string};
	/** As `box/terminal`. */
	'end-unknown': {readonly end: string};
	'cable-twice': {readonly count: number};
	'ends-reversed': {readonly from: string; readonly to: string};
	'ends-alike': {readonly from: string; readonly to: string; readonly both: 'outputs' | 'inputs'};
	'channels-crossed': {readonly output: string; readonly speaker: string};
	'polarity-reversed': NoFacts;
	'label-twice': {readonly label: string; readonly other: string};
	'run-too-short': {readonly cutMetres: number; readonly straightMetres: number};
	'run-too-long': {readonly cutMetres: number; readonly impedanceOhms: number};
	'conductor-thin': {
		readonly conductor: Conductor;
		readonly needs: Conductor;
		readonly cutMetres: number;
		readonly impedanceOhms: number;
	};
	separation: {
		readonly mains: string;
		readonly parallelMetres: number;
		readonly gapMetres: number;
		readonly usualMetres: number;
	};
	'parallel-unknown': {readonly index: number};
	'load-without-outlet': {readonly outlet: string};
	'outlet-unrated': NoFacts;
	'outlet-overloaded': Load;
	'outlet-close': Load;
	'lengths-unknown': {readonly unknown: number; readonly of: number};
};

export type WiringFinding = FindingOf<WiringFacts>;
