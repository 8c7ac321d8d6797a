import {useIsScreenReaderEnabled} from 'ink';
import {memo, useMemo} from 'react';
import type {Profile} from '../../../profile/types.ts';
import {Lines} from '../../parts/lines.tsx';
import {scrolled} from '../../parts/scrolled.ts';
import {type HubPlan, type HubState, hubKeys, hubStart, pressHub} from '../hub.ts';
import type {Page} from '../page.ts';
import type {Stop} from '../stop.ts';
import {wiringLines} from './lines.ts';
import {wiringPrompts} from './wiring.ts';

type Props = {
	readonly profile: Profile;
	readonly state: HubState;
	readonly columns: number;
	readonly height: number;
};

const Wiring = memo(function Wiring({profile, state, columns, height}: Props) {
	const isSpoken = useIsScreenReaderEnabled();
	const lines = useMemo(() => wiringLines(profile, columns), [profile, columns]);
	return <Lines columns={columns} lines={isSpoken ? lines : scrolled(lines, state.from, height)} />;
});

function wiringPlan(profile: Profile): HubPlan {
	const questions = wiringPrompts(profile).filter(({kind}) => kind !== 'page');
	const skipped = profile.walk?.skipped ?? [];
	const open = questions.find(({id, isAnswered}) => !isAnswered && !skipped.includes(id));
	return {goOn: open?.id, first: questions[0]?.id, lines: wiringLines(profile, 80).length};
}

/** The stop Wiring: what runs where, what is wrong with it, and the order to connect in. */
export const wiringPage: Page<HubState> = {
	start: () => hubStart,
	press: (profile, state, press) => pressHub(state, press, wiringPlan, profile),
	keys: hubKeys.map(([key, does]) => [key, key === 'e' ? 'questions' : does] as const),
	view: props => <Wiring {...props} />,
};

/** Cables, outlets and labels. */
export const wiringDrawer = {
	id: 'wiring',
	name: 'Wiring',
	prompts: wiringPrompts,
	page: wiringPage,
} as const satisfies Stop<HubState>;
