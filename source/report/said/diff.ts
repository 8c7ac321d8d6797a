import type {DiffFacts} from '../../study/comparison/diff/facts.ts';
import type {Sentences} from './sentences.ts';

export const diffSentences: Sentences<DiffFacts> = {
	'one-profile-twice': () => [
		'the two files hold the same profile, word for word',
		'Was the other one meant?',
	],
	'different-rooms': ({olderRoom, newerRoom}) => [
		`the rooms differ, ${olderRoom} and ${newerRoom}`,
		'Channels, readings and settings are compared all the same; “moved” then means “stands elsewhere”.',
	],
	'dates-run-backwards': ({firstDate, secondDate}) => [
		`the second profile, ${secondDate}, is older than the first, ${firstDate}`,
		'“Before” and “after” follow the order of the files.',
	],
	'settings-missing': ({side}) => [
		`the ${side} profile stores no settings`,
		'What its readings ask for is compared instead.',
	],
	'settings-stale': ({side}) => [
		`the ${side} profile’s settings were computed before its latest readings or gear`,
		'What that changes counts as unexplained.',
	],
	'receiver-missing': ({side}) => [
		`the ${side} profile describes no receiver`,
		'Its settings have no steps, so their changes stay unexplained.',
	],
	'responses-coloured': () => [
		'a recorder’s own colour is in these recordings: no microphone curve was given in both profiles',
		'Dips, peaks, decay and levels against each other above the bass are compared, the level of the bass is not.',
	],
};
