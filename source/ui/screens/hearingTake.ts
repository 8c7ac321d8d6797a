import {withLatencies, withRound} from '../../study/hearing/takeRound.ts';
import {reduceRound} from '../walk/state.ts';
import {walkRound} from '../walk/stops.ts';
import {saveWalk} from './save.ts';
import type {AppScreen, HearingScreen, World} from './screen.ts';

/** Takes what is sound and wanted into the profile, saves it, and goes back to the walk. */
export function takeHeard(screen: HearingScreen, world: World): AppScreen {
	const {back, hearing} = screen;
	const {report, waiting, latencies} = hearing;
	const say = (text: string): HearingScreen => ({...screen, hearing: {...hearing, note: {kind: 'no', text}}});
	if (waiting.length > 0) return say('One moment: not everything is heard yet.');
	if (!report || report.taken.recordings.length === 0)
		return say('Nothing sound is left to be taken. Play it again, as the sentences say.');
	const before = back.state.subject;
	const taken = withLatencies(
		withRound(before, report.taken, report.blend),
		report.offers.latencies.filter(({channel}) => latencies.includes(channel)),
	);
	world.recordings!.stop();
	const changed = reduceRound(walkRound, back.state, {kind: 'change', subject: taken});
	const count = report.taken.recordings.length;
	const state = reduceRound(walkRound, changed, {
		kind: 'say',
		note: {
			kind: 'said',
			text: `${count === 1 ? 'One playing was' : `${count} playings were`} taken. u takes it back.`,
		},
	});
	return saveWalk({...back, state, previous: before}, world);
}
