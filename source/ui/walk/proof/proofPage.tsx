import {useIsScreenReaderEnabled} from 'ink';
import {memo, useMemo} from 'react';
import type {Profile} from '../../../profile/types.ts';
import {Lines} from '../../parts/lines.tsx';
import {scrolled} from '../../parts/scrolled.ts';
import {situationOf} from '../dialIn/situation.ts';
import {type HubPlan, type HubState, hubKeys, hubStart, pressHub} from '../hub.ts';
import type {Page} from '../page.ts';
import {type Progress, progressOf} from '../progress.ts';
import type {Stop} from '../stop.ts';
import {proofLines} from './lines.ts';
import {proofPrompts} from './proof.ts';
import {judgedOf, planOf, proofOf} from './proofOf.ts';

type Props = {
	readonly profile: Profile;
	readonly state: HubState;
	readonly columns: number;
	readonly height: number;
};

const Proof = memo(function Proof({profile, state, columns, height}: Props) {
	const isSpoken = useIsScreenReaderEnabled();
	const lines = useMemo(() => proofLines(profile, columns), [profile, columns]);
	return <Lines columns={columns} lines={isSpoken ? lines : scrolled(lines, state.from, height)} />;
});

export function proofHub(profile: Profile): HubPlan {
	const questions = proofPrompts(profile).filter(({kind}) => kind !== 'page');
	const skipped = profile.walk?.skipped ?? [];
	const open = questions.find(({id, isAnswered}) => !isAnswered && !skipped.includes(id));
	const missed = proofOf(profile)
		.readings.filter(({verdict}) => verdict === 'missed')
		.toSorted((a, b) => Math.abs(b.residual) - Math.abs(a.residual));
	const worst = questions.find(({id}) => id === `proof:${missed[0]?.key}`);
	return {
		goOn: open?.id,
		first: questions[0]?.id,
		worst: worst?.id,
		lines: proofLines(profile, 80).length,
	};
}

/** The stop Proof: the second round against its predictions, and what probably went wrong. */
export const proofPage: Page<HubState> = {
	start: () => hubStart,
	press: (profile, state, press) =>
		press.key === 'character' && press.text === 'r' && planOf(profile).length > 0
			? {kind: 'hear', round: 'proof'}
			: pressHub(state, press, proofHub, profile),
	keys: profile => (planOf(profile).length > 0 ? [...hubKeys, ['r', 'record']] : hubKeys),
	view: props => <Proof {...props} />,
};

/** Done only where it is met. A proof of settings that newer readings have overtaken proves nothing yet. */
function proofProgress(profile: Profile): Progress {
	const none = {answered: 0, required: 0};
	if (situationOf(profile).kind === 'stale') return {...none, state: 'page'};
	const questions = progressOf(proofPrompts(profile));
	if (planOf(profile).length === 0) return questions;
	const {readings, unjudged} = judgedOf(profile);
	if (readings.some(({verdict}) => verdict === 'missed')) return {...none, state: 'missed'};
	return questions.state === 'done' && unjudged.length > 0 ? {...none, state: 'later'} : questions;
}

/** The second round of readings, against what was predicted. */
export const proofStop = {
	id: 'proof',
	name: 'Proof',
	prompts: proofPrompts,
	page: proofPage,
	progress: proofProgress,
	after: 'keep',
} as const satisfies Stop<HubState>;
