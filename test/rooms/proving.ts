import type {Profile} from '../../source/profile/types.ts';
import {boxesOf} from './boxes.ts';
import {besideSeat} from './instruments.ts';
import type {Point} from './physics/box.ts';
import type {Draws} from './physics/random.ts';
import {type Asked, askedForProof, namedBy, type Verdict, verdictOf} from './product.ts';
import type {Round} from './round.ts';
import {copied, take} from './session.ts';
import {drawnSlips, type Slip} from './slips.ts';

/** Where the meter stands in the second round: at the very spot, or each time it is put down 12 cm off. */
export type Standing = 'spot' | '12 cm';

const besideMetres = 0.12;
/** More looks than the product asks for at any row, unless it never comes to an end. */
const mostLooks = 8;

/** First explanations: one names only what was wrong; one names somebody innocent; the latter is called certain. */
export type Naming = {
	readonly isRightNamed: boolean;
	readonly isInnocentNamed: boolean;
	readonly isCertainButWrong: boolean;
};

/** One proof after a slip, or after none. */
export type Proof = {
	readonly slip: Slip | undefined;
	readonly standing: Standing;
	readonly verdict: Verdict;
	/** What the first explanations name; absent where nobody asked for causes, for the search takes long. */
	readonly naming?: Naming;
	readonly readings: number;
};

/**
The second round with one slip at the boxes.

@param isNamed - Whether causes are looked for as well.
*/
export function proved(
	{session, final}: Round,
	slip: Slip | undefined,
	standing: Standing,
	isNamed: boolean,
): Proof {
	const name = `proof ${standing} ${slip ? `${slip.kind} ${slip.about.join()} ${slip.size}` : 'clean'}`;
	const own = copied(session, name);
	own.boxes = boxesOf(slip ? slip.typed(final) : final);
	const spot = (draws: Draws): Point =>
		standing === 'spot' ? own.world.places.seat : besideSeat(own.world, besideMetres, draws);
	// All rooms' slips share the first place beside the seat, so that its sound is worked out once.
	const first = spot(session.draws.branch('second round'));
	let readings = 0;
	const read = (asked: readonly Asked[], point: Point) => {
		for (const one of asked) take(own, one, {round: 'proof', point});
		readings += asked.length;
	};
	read(askedForProof(own.profile).asked, first);
	for (let look = 1; look < mostLooks; look++) {
		const {again} = askedForProof(own.profile);
		if (again.length === 0) break;
		read(again, spot(session.draws.branch(`look ${look}`)));
	}

	const {verdict} = verdictOf(own.profile);
	return {slip, standing, verdict, readings, ...(isNamed && {naming: namingOf(own.profile, slip)})};
}

function namingOf(profile: Profile, slip: Slip | undefined): Naming {
	const named = namedBy(profile);
	const isOf = (about: readonly string[]) => slip !== undefined && about.every(id => slip.about.includes(id));
	return {
		isRightNamed: named.some(({about}) => isOf(about)),
		isInnocentNamed: named.some(({about}) => !isOf(about)),
		isCertainButWrong: named.some(({about, isCertain}) => isCertain && !isOf(about)),
	};
}

/** The clean second round at both places, and one with each slip at those named. */
export function allProofs(round: Round, slipsAt: readonly Standing[], isNamed: boolean): Proof[] {
	const slips = drawnSlips(round.found, round.final, round.session.draws.branch('slips'));
	return (['spot', '12 cm'] as const).flatMap(standing =>
		[undefined, ...(slipsAt.includes(standing) ? slips : [])].map(slip =>
			proved(round, slip, standing, isNamed),
		),
	);
}
