import {Box, Text, useApp, useInput} from 'ink';
import {useCallback, useEffect, useSyncExternalStore} from 'react';
import {type Press, pressesOf} from './keys/press.ts';
import {CompareView} from './screens/compareView.tsx';
import {CreateView} from './screens/createView.tsx';
import {HearingView} from './screens/hearingView.tsx';
import {HistoryView} from './screens/historyView.tsx';
import {HomeView} from './screens/homeView.tsx';
import {PlanningView} from './screens/planningView.tsx';
import type {AppScreen} from './screens/screen.ts';
import {WalkView} from './screens/walkView.tsx';
import type {Session} from './session.ts';
import {useSuspend} from './terminal/useSuspend.ts';
import {useWindowSize} from './terminal/useWindowSize.ts';

/** How long the place of the walk may rest before it is written: arrows held down write once, not each time. */
const restMs = 250;
/** How often the watched folder is looked into. */
const lookMs = 1000;

/** The whole interface: one reader of keys, one screen. */
export function App({session}: {readonly session: Session}) {
	const screen = useSyncExternalStore(session.subscribe, session.screen);
	const size = useWindowSize();
	const {exit} = useApp();
	const {isAway, suspend} = useSuspend();
	const onPresses = useCallback(
		(presses: readonly Press[]) => {
			if (presses.some(({key}) => key === 'interrupt')) session.interrupt();
			else if (presses.some(({key}) => key === 'suspend')) {
				session.keep();
				suspend();
			} else session.press(presses);
		},
		[session, suspend],
	);
	useInput((input, key) => onPresses(pressesOf(input, key)));
	useEffect(() => {
		if (screen.kind !== 'walk' || screen.keptPromptId === screen.state.promptId) return;
		const timer = setTimeout(session.keep, restMs);
		return () => clearTimeout(timer);
	}, [screen, session]);
	const isWatching = screen.kind === 'hearing' && screen.hearing.step === 'arrive';
	useEffect(() => {
		if (!isWatching) return;
		const timer = setInterval(session.look, lookMs);
		return () => clearInterval(timer);
	}, [isWatching, session]);
	useEffect(() => {
		if (screen.kind === 'left') exit();
	}, [screen, exit]);
	return isAway ? <Blank /> : <ScreenView screen={screen} size={size} />;
}

function ScreenView({
	screen,
	size,
}: {
	readonly screen: AppScreen;
	readonly size: ReturnType<typeof useWindowSize>;
}) {
	switch (screen.kind) {
		case 'home':
			return <HomeView screen={screen} size={size} />;
		case 'history':
			return <HistoryView screen={screen} size={size} />;
		case 'create':
			return <CreateView screen={screen} size={size} />;
		case 'walk':
			return <WalkView screen={screen} size={size} />;
		case 'compare':
			return <CompareView screen={screen} size={size} />;
		case 'hearing':
			return <HearingView screen={screen} size={size} />;
		case 'planning':
			return <PlanningView screen={screen} size={size} />;
		case 'left':
			return <Blank />;
	}
}

function Blank() {
	return (
		<Box>
			<Text> </Text>
		</Box>
	);
}
