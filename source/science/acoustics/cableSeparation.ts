export type Divider = 'none' | 'aluminium' | 'steel';

// EN 50174-2:2000, table of minimum separation, millimetres: rows by power cable and signal cable screened or not.
// Later editions calculate the distance instead; the table is for information cabling and serves here as a yardstick.
const separationMillimetres: ReadonlyArray<{
	readonly mainsScreened: boolean;
	readonly signalScreened: boolean;
	readonly byDivider: Readonly<Record<Divider, number>>;
}> = [
	{mainsScreened: false, signalScreened: false, byDivider: {none: 200, aluminium: 100, steel: 50}},
	{mainsScreened: false, signalScreened: true, byDivider: {none: 50, aluminium: 20, steel: 5}},
	{mainsScreened: true, signalScreened: false, byDivider: {none: 30, aluminium: 10, steel: 2}},
	{mainsScreened: true, signalScreened: true, byDivider: {none: 0, aluminium: 0, steel: 0}},
];

/**
Distance to keep between a mains cable and a signal cable that run side by side.

@returns Metres.
@see EN 50174-2:2000, table of minimum separation distances.
*/
export function minimumSeparationMetres(
	mainsScreened: boolean,
	signalScreened: boolean,
	divider: Divider = 'none',
): number {
	const row = separationMillimetres.find(
		candidate => candidate.mainsScreened === mainsScreened && candidate.signalScreened === signalScreened,
	);
	return row!.byDivider[divider] / 1000;
}
