import type {ConventionFact} from '../../study/survey/facts.ts';
import type {Say} from './say.ts';

const texts = {
	'mid-width': "is drawn in the middle of the room's width",
	'usual-distance': 'is drawn at a usual distance from the screen wall',
	'usual-height': 'is drawn at a usual height',
	'straight-ahead': 'is taken as straight ahead',
	'usual-direction': 'is taken to stand in its usual direction',
	'usual-height-above-ear': 'is taken at a usual height above the ear',
	'room-width': "the room's width is taken as usual",
	'room-length': "the room's length is taken as usual",
	'room-height': "the room's height is taken as usual",
} as const;

/** What is taken for granted where the walls do not hold a drawing, as part of a sentence. */
export function conventionText(convention: ConventionFact, {name}: Say): string {
	return 'about' in convention
		? `${name(convention.about)} ${texts[convention.what]}`
		: texts[convention.what];
}
