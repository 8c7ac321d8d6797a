import {meterKey, type Observations} from '../../../profile/ask/readings.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import type {Profile} from '../../../profile/types.ts';
import type {TestSpectrum} from '../../../science/acoustics/band.ts';
import {energyMean} from '../../../science/acoustics/decibels.ts';
import {combinedSigma} from '../../../science/numeric/statistics.ts';
import type {LevelFinding} from './facts.ts';
import {type LevelContext, type SeatLevel, seatLevel} from './levels.ts';

export type WeightedSeat = {readonly id: string; readonly weight: number};

/**
The seats that levels are made for: the reference seat alone, or, where the target asks for it, all seats at which every
source that was read anywhere was read. A seat with gaps would favour some channels over others.
*/
export function levelSeats(
	profile: Profile,
	observations: Observations,
	sources: readonly string[],
): readonly WeightedSeat[] {
	const reference = referenceSeat(profile);
	const alone = [{id: reference.id, weight: 1}];
	if (profile.target?.seats !== 'weighted') return alone;
	const has = (seat: string, source: string) => observations.meter.has(meterKey(seat, source));
	const read = sources.filter(source => profile.seats.some(({id}) => has(id, source)));
	const whole = profile.seats.filter(
		({id, weight}) => (weight ?? 1) > 0 && read.every(source => has(id, source)),
	);
	return whole.length === 0 ? alone : whole.map(({id, weight}) => ({id, weight: weight ?? 1}));
}

/** Weighted energy mean of a source's level over seats. Seats where nothing usable was read are left out. */
export function levelOverSeats(
	context: LevelContext,
	seats: readonly WeightedSeat[],
	source: string,
	usualSpectrum: TestSpectrum,
): {readonly level?: SeatLevel; readonly remarks: readonly LevelFinding[]} {
	if (seats.length === 1) return seatLevel(context, seats[0]!.id, source, usualSpectrum);
	const found = seats.map(({id, weight}) => ({weight, ...seatLevel(context, id, source, usualSpectrum)}));
	const remarks = found.flatMap(seat => seat.remarks);
	const levels = found.flatMap(({level, weight}) => (level ? [{level, weight}] : []));
	if (levels.length === 0) return {remarks};
	const weights = levels.map(({weight}) => weight);
	const atZeroTrimDb = energyMean(
		levels.map(({level}) => level.atZeroTrimDb),
		weights,
	);
	// Each seat moves the mean by its share of the energy.
	const energies = levels.map(({level, weight}) => weight * 10 ** ((level.atZeroTrimDb - atZeroTrimDb) / 10));
	const total = energies.reduce((sum, energy) => sum + energy, 0);
	const together = (sigmaOf: (level: SeatLevel) => number) =>
		combinedSigma(...levels.map(({level}, index) => (energies[index]! / total) * sigmaOf(level)));
	const {gainInForceDb, weightingCorrectionDb} = levels[0]!.level;
	return {
		remarks,
		level: {
			decibels: atZeroTrimDb + gainInForceDb,
			atZeroTrimDb,
			gainInForceDb,
			sigmaDb: together(({sigmaDb}) => sigmaDb),
			singleSigmaDb: together(({singleSigmaDb}) => singleSigmaDb),
			repeats: Math.min(...levels.map(({level}) => level.repeats)),
			points: Math.min(...levels.map(({level}) => level.points)),
			spreadDb: Math.max(...levels.map(({level}) => level.spreadDb)),
			backgroundCorrectionDb: Math.min(...levels.map(({level}) => level.backgroundCorrectionDb)),
			weightingCorrectionDb,
			remarks,
		},
	};
}
