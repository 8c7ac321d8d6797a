import type {KitKind} from '../gear.ts';
import type {Proof, Standing} from '../proving.ts';
import type {Slip} from '../slips.ts';
import {type Bar, percentText, shareOf, table} from './share.ts';

export type ProofRun = Omit<Proof, 'slip'> & {
	readonly room: string;
	readonly kit: KitKind;
	readonly slip?: {readonly kind: Slip['kind']; readonly size: number};
};

export function proofRun(room: string, kit: KitKind, {slip, ...proof}: Proof): ProofRun {
	return {...proof, room, kit, ...(slip && {slip: {kind: slip.kind, size: slip.size}})};
}

const isFound = ({verdict}: ProofRun) => verdict === 'missed';
const isTrim = ({slip}: ProofRun) =>
	slip?.kind === 'sign' || slip?.kind === 'forgotten' || slip?.kind === 'swapped';

const columns = [
	['clean', run => run.slip === undefined],
	['sign', run => run.slip?.kind === 'sign'],
	['swapped', run => run.slip?.kind === 'swapped'],
	['forgotten', run => run.slip?.kind === 'forgotten'],
	['one sub turned', run => run.slip?.kind === 'one sub turned'],
	['all turned', run => run.slip?.kind === 'all subs turned'],
	['delay', run => run.slip?.kind === 'sub delay'],
	['crossover', run => run.slip?.kind === 'crossover'],
	['1 dB', run => isTrim(run) && run.slip!.size < 2],
	['2 dB', run => isTrim(run) && run.slip!.size >= 2 && run.slip!.size < 3],
	['3 dB', run => isTrim(run) && run.slip!.size >= 3],
] as const satisfies ReadonlyArray<readonly [string, (run: ProofRun) => boolean]>;

const standings: readonly Standing[] = ['spot', '12 cm'];

export function proofLines(all: readonly ProofRun[]): string[] {
	const rows = standings.flatMap(standing => {
		const runs = all.filter(run => run.standing === standing);
		if (runs.length === 0) return [];
		const of = (holds: (run: ProofRun) => boolean, name: string, among = runs) => [
			`${standing}: ${name}`,
			...columns.map(([, isIn]) => percentText(shareOf(among.filter(isIn), holds))),
		];
		const named = runs.filter(({naming}) => naming);
		return [
			[`${standing}: runs`, ...columns.map(([, isIn]) => `${runs.filter(isIn).length}`)],
			of(isFound, 'missed'),
			of(({verdict}) => verdict === 'open', 'open'),
			[`${standing}: runs with causes`, ...columns.map(([, isIn]) => `${named.filter(isIn).length}`)],
			of(({naming}) => naming!.isRightNamed, 'right one named', named),
			of(({naming}) => naming!.isInnocentNamed, 'innocent named', named),
			of(({naming}) => naming!.isCertainButWrong, 'certain but wrong', named),
		];
	});
	return ['Proof: share of rounds', ...table([['', ...columns.map(([name]) => name)], ...rows])];
}

export function proofBars(all: readonly ProofRun[]): Bar[] {
	const clean = (standing: Standing) => all.filter(run => run.standing === standing && !run.slip);
	const beside = all.filter(run => run.standing === '12 cm');
	const slipped = (isIn: (run: ProofRun) => boolean) => beside.filter(run => run.slip && isIn(run));
	const kind = (kind: Slip['kind']) => slipped(run => run.slip!.kind === kind);
	const trims = slipped(isTrim);
	return [
		{what: 'proof, clean, same spot: missed', share: shareOf(clean('spot'), isFound), atMost: 5},
		{what: 'proof, clean, 12 cm: missed', share: shareOf(clean('12 cm'), isFound), atMost: 10},
		{
			what: 'proof, clean, same spot: met',
			share: shareOf(clean('spot'), ({verdict}) => verdict === 'met'),
			atLeast: 90,
		},
		{
			what: 'proof, clean, 12 cm: met',
			share: shareOf(clean('12 cm'), ({verdict}) => verdict === 'met'),
			atLeast: 85,
		},
		{
			what: 'proof, 12 cm: slips of trims from 3 dB found',
			share: shareOf(
				trims.filter(({slip}) => slip!.size >= 3),
				isFound,
			),
			atLeast: 95,
		},
		{
			what: 'proof, 12 cm: slips of trims of 2 to 3 dB found',
			share: shareOf(
				trims.filter(({slip}) => slip!.size >= 2 && slip!.size < 3),
				isFound,
			),
			atLeast: 65,
		},
		{
			what: 'proof, 12 cm: one sub turned found',
			share: shareOf(kind('one sub turned'), isFound),
			atLeast: 90,
		},
		{
			what: 'proof, 12 cm: all subs turned found',
			share: shareOf(kind('all subs turned'), isFound),
			atLeast: 90,
		},
		{
			what: 'proof, 12 cm: one sub 2 ms off or more found',
			share: shareOf(kind('sub delay'), isFound),
			atLeast: 80,
		},
		{
			what: 'proof, 12 cm: the wrong channel called certain',
			share: shareOf(
				slipped(({naming}) => naming !== undefined),
				({naming}) => naming!.isCertainButWrong,
			),
			atMost: 2,
		},
	];
}
