import {useIsScreenReaderEnabled} from 'ink';
import {memo, useMemo} from 'react';
import type {Profile} from '../../../profile/types.ts';
import {Lines} from '../../parts/lines.tsx';
import {scrolled} from '../../parts/scrolled.ts';
import {situationOf} from '../dialIn/situation.ts';
import {type HubPlan, type HubState, hubKeys, hubStart, pressHub} from '../hub.ts';
import type {Page} from '../page.ts';
import {bassPrompts} from './bass.ts';
import {bassLines} from './lines.ts';

type Props = {
	readonly profile: Profile;
	readonly state: HubState;
	readonly columns: number;
	readonly height: number;
};

const Bass = memo(function Bass({profile, state, columns, height}: Props) {
	const isPlain = useIsScreenReaderEnabled();
	const lines = useMemo(() => bassLines(profile, columns, isPlain), [profile, columns, isPlain]);
	return <Lines columns={columns} lines={isPlain ? lines : scrolled(lines, state.from, height)} />;
});

/** Open tones first; then, where they change the settings, the stop that asks to type them in. */
export function bassPlan(profile: Profile): HubPlan {
	const questions = bassPrompts(profile).filter(({kind}) => kind !== 'page');
	const skipped = profile.walk?.skipped ?? [];
	const open = questions.find(({id, isAnswered}) => !isAnswered && !skipped.includes(id));
	const isRead = questions.some(({kind, isAnswered}) => kind === 'reading' && isAnswered);
	const changes = isRead && situationOf(profile).kind === 'stale' ? 'dialIn' : undefined;
	return {goOn: open?.id ?? changes, first: questions[0]?.id, lines: bassLines(profile, 80).length};
}

/** The stop Bass: what the tones through the crossover told, and what to do next. */
export const bassPage: Page<HubState> = {
	start: () => hubStart,
	press: (profile, state, press) => pressHub(state, press, bassPlan, profile),
	keys: hubKeys,
	view: props => <Bass {...props} />,
};
