import type {Press} from '../keys/press.ts';
import {pressRound} from '../walk/pressRound.ts';
import {draftRound, profileOf} from './draft.ts';
import {openHome} from './home.ts';
import {openWalk} from './openWalk.ts';
import {openPlanning} from './planning.ts';
import type {AppScreen, CreateScreen, World} from './screen.ts';

/** One key in the questions before a profile exists; after the last one the profile is made and its walk opens. */
export function pressCreate(screen: CreateScreen, press: Press, world: World): AppScreen {
	const {state, isLeaving} = pressRound(draftRound, screen.state, press, '');
	if (isLeaving) return openHome(world, [{kind: 'note', text: 'Nothing was made.'}]);
	const wasTaken = state.past.length > screen.state.past.length;
	const profile = wasTaken ? profileOf(state.subject) : undefined;
	if (!profile) return {...screen, state};
	const created = world.files.create(profile);
	if (!created.ok) return {...screen, state: {...state, notes: [{kind: 'no', text: created.text}]}};
	if (state.subject.plan) return openPlanning(world, created.file);
	return openWalk(world, created.file) ?? openHome(world);
}
