import {expect, test} from 'vitest';
import {planChangeLines} from '../../../source/report/said/planChange.ts';
import {sayIn} from '../../../source/report/said/say.ts';
import type {PlanChange, PlanMove} from '../../../source/study/placement/planChange.ts';
import {tapeTermsOf, wayStepsOf} from '../../../source/study/placement/way.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';

const room = {widthMetres: 4.2, lengthMetres: 5.6};
const move = (name: string, by: Vector, to: Vector): PlanMove => {
	const steps = wayStepsOf(by);
	const axes = steps.map(({axis}) => axis);
	const from: Vector = [to[0] - by[0], to[1] - by[1], to[2] - by[2]];
	return {
		id: name,
		name,
		from,
		to,
		by,
		metres: Math.hypot(...by),
		steps,
		places: tapeTermsOf({room}, to, axes),
	};
};
const nothing: PlanChange = {
	conventions: {older: [], newer: []},
	moved: [],
	stayed: [],
	onlyOlder: [],
	onlyNewer: [],
};
const both = (unit?: 'ft-in') => {
	const say = sayIn({seats: [{id: 'sofa', name: 'Sofa'}]}, unit);
	return {older: sayIn({seats: [{id: 'sofa', name: 'Old sofa'}]}, unit), newer: say};
};
const text = (change: Partial<PlanChange>, unit?: 'ft-in') =>
	planChangeLines({change: {...nothing, ...change}, sameRoom: true}, both(unit));

test('planChangeLines says nothing of two empty plans', () => {
	expect(text({})).toEqual([]);
});

test('planChangeLines says so where nothing moved', () => {
	expect(text({stayed: ['Screen']})).toEqual(['Nothing stands elsewhere, as far as the tape can tell.']);
});

test('planChangeLines gives the way, and the new place from the nearer wall', () => {
	const [line] = text({moved: [move('Front right', [0.2, 0, 0], [3.6, 0.5, 1])]});
	expect(line).toBe('Front right: 0.20 m to the right; now 0.60 m from the right wall.');
});

test('planChangeLines gives a slanting move its length', () => {
	const [line] = text({moved: [move('Sub 1', [-0.3, 0.4, 0], [0.6, 0.9, 0.3])]});
	expect(line).toMatch(/^Sub 1: 0\.50 m in all, 0\.30 m to the left and 0\.40 m towards the back wall; now /);
});

test('planChangeLines tells together what moved alike', () => {
	const moved = ['Sofa left', 'Sofa right'].map(name => move(name, [0, -0.41, 0], [2, 3.3, 1.1]));
	expect(text({moved})).toEqual(['Sofa left and Sofa right: 0.41 m towards the screen wall each.']);
});

test('planChangeLines speaks in feet and inches where asked', () => {
	// 0.3048 m is one foot by definition (international yard and pound agreement of 1959).
	expect(text({moved: [move('Front right', [0.3048, 0, 0], [3.6, 0.5, 1])]}, 'ft-in')[0]).toMatch(
		/^Front right: 1′/,
	);
});

test('planChangeLines says in words that the room is turned, and that an entry may be wrong', () => {
	const [half] = text({turn: {turn: 'half', by: 'ceiling'}});
	expect(half).toMatch(/turned round.*low side.*opposite.*entered the wrong way round.*facing the screen/);
	const [quarter] = text({turn: {turn: 'quarter', by: 'walls'}});
	expect(quarter).toMatch(/width and length.*side wall/);
});

test('planChangeLines says which plan no wall holds', () => {
	const lines = text({
		conventions: {older: [{what: 'mid-width', about: 'sofa'}, {what: 'room-length'}], newer: []},
		onlyNewer: ['Screen'],
	});
	expect(lines[0]).toContain(
		"The older plan is not tied to the walls (Old sofa is drawn in the middle of the room's width; the room's length is taken as usual)",
	);
	expect(lines).toContain('Only in the newer plan: Screen.');
});

test('planChangeLines says that the rooms differ', () => {
	expect(planChangeLines({change: nothing, sameRoom: false}, both())[0]).toContain('The rooms differ');
});
