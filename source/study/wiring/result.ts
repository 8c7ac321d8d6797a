import type {Connection} from '../../profile/types.ts';
import type {Conductor} from '../../science/acoustics/cable.ts';
import type {WiringFinding} from './facts.ts';

export type CableKind = Connection['kind'];

/** One cable: as entered in the profile, or proposed because the arrangement needs it. */
export type Cable = {
	readonly id: string;
	/** What is printed on both of its ends. */
	readonly label: string;
	readonly from: string;
	readonly to: string;
	readonly kind: CableKind;
	readonly origin: 'entered' | 'proposed';
	readonly route?: string;
	/** Length along the route, metres, and where it comes from. */
	readonly run?: {readonly metres: number; readonly from: 'measured' | 'estimated'};
	readonly slackMetres?: number;
	/** Run and slack together: what to cut. */
	readonly cutMetres?: number;
	readonly impedanceOhms?: number;
	/** What is there, as entered. */
	readonly conductor?: Conductor;
	/** The thinnest conductor that will do; for speaker cables of known length and impedance. */
	readonly needs?: Conductor;
	/** Level lost in the cable, dB, for the conductor that is there or else the one it needs. */
	readonly lossDb?: number;
	readonly done: boolean;
};

export type OutletBudget = {
	readonly id: string;
	readonly name: string;
	readonly loads: ReadonlyArray<{readonly name: string; readonly watts: number}>;
	readonly watts: number;
	readonly voltAmperes: number;
	/** The rating that gives out first, as a share used (1 = full), and its words. */
	readonly share?: number;
	readonly limit?: string;
};

/** One step of connecting or of switching on, with the ids of its cables. */
export type Step = {
	readonly code: 'all-off' | 'overheads' | 'speakers' | 'lines' | 'others' | 'power-last';
	readonly cables: readonly string[];
};

export type PurchaseTotal = {
	readonly what: string;
	readonly cables: number;
	readonly metres: number;
	/** Cables of this kind whose length is not known and so not in the sum. */
	readonly unknown: number;
};

export type WiringResult = {
	readonly cables: readonly Cable[];
	readonly order: readonly Step[];
	readonly totals: readonly PurchaseTotal[];
	readonly outlets: readonly OutletBudget[];
	readonly remarks: readonly WiringFinding[];
};

/** Positions in the room frame, metres, by channel, sub or box; used to estimate and check runs. */
export type Positions = ReadonlyMap<string, {readonly x: number; readonly y: number; readonly z: number}>;
