import type {Profile} from '../../../profile/types.ts';
import {standingOf} from '../../../study/comparison/sheetData.ts';
import type {Positions, WiringResult} from '../../../study/wiring/result.ts';
import {wiring} from '../../../study/wiring/wiring.ts';
import {derived} from '../../derived.ts';
import {measuredOf} from '../measured.ts';
import {tapedNetworkOf} from '../sceneOf.ts';
import {solutionOf} from '../solution.ts';

/** Where things stand, as far as the tape ties them to the walls. */
export const positionsOf: (profile: Profile) => Positions = derived(
	{network: tapedNetworkOf, solution: solutionOf},
	({network, solution}) => standingOf(network, solution).positions,
);

/** Cables with their lengths, what to buy, outlets, order and remarks. */
export const wiringOf: (profile: Profile) => WiringResult = derived(
	{measured: measuredOf, positions: positionsOf},
	({measured, positions}) => wiring(measured, positions),
);
