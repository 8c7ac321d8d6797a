import {expect, test, vi} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {type SearchNews, searchProfile} from '../../../source/study/arrangement/orders.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import {App} from '../../../source/ui/app.tsx';
import {pressesOf} from '../../../source/ui/keys/press.ts';
import type {Searches} from '../../../source/ui/searches.ts';
import {type Session, startSession} from '../../../source/ui/session.ts';
import {drawIn} from '../fakeTerminal.ts';
import {type MemoryFiles, memoryFiles} from '../memoryFiles.ts';

const enter = '\r';
const named = {
	up: {upArrow: true},
	down: {downArrow: true},
	left: {leftArrow: true},
	right: {rightArrow: true},
};

function begin(files: MemoryFiles = memoryFiles(), searches?: Searches) {
	const session = startSession({files, now: () => new Date(), ...(searches && {searches})});
	const press = (...keys: readonly (string | keyof typeof named)[]) => {
		for (const key of keys)
			session.press(
				key in named
					? pressesOf('', named[key as keyof typeof named])
					: pressesOf(key, {return: key === enter}),
			);
	};
	return {files, session, press};
}

/** A room typed by its four answers, then two subs. */
function planned(height = '2.4m', searches?: Searches) {
	const started = begin(memoryFiles(), searches);
	started.press('p', '3.6m', enter, '4.6m', enter, height, enter, '3.1m', enter, 'r', 'subs 2', enter);
	return started;
}

function planOf(session: Session) {
	const screen = session.screen();
	if (screen.kind !== 'planning') throw new Error(`at ${screen.kind}, not planning`);
	return screen.plan;
}

const noteOf = (session: Session) =>
	planOf(session)
		.notes.map(({text}) => text)
		.join(' ');
const kept = ({kept: profiles}: MemoryFiles): Profile => [...profiles.values()].at(-1)!;

/** A search runs between keys: waits for its end. */
const searched = (session: Session) =>
	vi.waitFor(() => expect(planOf(session).search).toBeUndefined(), {timeout: 60_000, interval: 50});

test('four answers give the first picture, with the ladder, the plan and the seats', () => {
	const {session} = planned('2.7m/1.7m');
	const {shape} = planOf(session).space.room;
	expect(shape).toMatchObject({kind: 'ceiling', widthMetres: 3.6, lengthMetres: 4.6, across: 0});
	expect(planOf(session).space.seats[0]!.at[1]).toBe(3.1);
	const frame = drawIn(80, 24, <App session={session} />).frame();
	expect(frame).toContain('as it stands');
	expect(frame).toContain('Reference seat');
	expect(frame).toContain('sub B');
	expect(frame.split('\n').length).toBeLessThanOrEqual(23);
});

test.each([
	['0', 'no room is that size'],
	['900m', 'no room is that size'],
])('a width of %s is refused with a sentence', (typed, said) => {
	const {session, press} = begin();
	press('p', typed, enter);
	const screen = session.screen();
	expect(screen.kind).toBe('create');
	const notes = screen.kind === 'create' ? screen.state.notes : [];
	expect(notes[0]?.kind).toBe('no');
	expect(notes[0]?.text).toContain(said);
});

test('a seat behind the back wall is refused', () => {
	const {session, press} = begin();
	press('p', '4.6m', enter, '6.2m', enter, '2.4m', enter, '7m', enter);
	const screen = session.screen();
	expect(screen.kind === 'create' && screen.state.notes[0]?.text).toContain('not inside the room');
});

test.each([
	['door left 5m 9m', 'beyond its wall'],
	['door left 3m 2m', 'smaller length comes first'],
	['sofa left 1m 2m', 'is none of'],
	['height 0.9m/0.8m', 'height is 0.90 m'],
	['width 0.3m', 'Expected between'],
	['seat 9m', 'outside the walls'],
	['subs 9', 'from 1 to 4'],
	['notch middle 1m 1m', 'is no corner'],
	['notch back right 5m 1m', 'missing corner'],
	['width 1000m', '1000'],
	['width 300m', 'no room is that size'],
	['height 0m', 'height is'],
])('about the room “%s” gets a sentence and changes nothing', (typed, said) => {
	const {session, press, files} = planned();
	const before = kept(files);
	press('r', typed, enter);
	expect(noteOf(session)).toContain(said);
	expect(kept(files)).toEqual(before);
});

test('what is typed about the room is kept and drawn; undo takes it back', () => {
	const {session, press, files} = planned();
	press('r', 'door left 3.4m 4.3m swing 0.9m - to the hall', enter);
	expect(kept(files).room.features).toEqual([
		{on: 'wall:left', kind: 'door', fromMetres: 3.4, toMetres: 4.3, swingMetres: 0.9, note: 'to the hall'},
	]);
	press('u');
	expect(kept(files).room.features ?? []).toEqual([]);
	expect(planOf(session).space.subs.length).toBe(2);
});

test('a corner that is missing is typed and drawn, and taken back', () => {
	const {session, press} = planned();
	press('r', 'notch front left 1.2m 0.9m', enter);
	expect(planOf(session).space.room.shape).toMatchObject({
		kind: 'corner',
		missing: {corner: 'frontLeft', widthMetres: 1.2, lengthMetres: 0.9},
	});
	press('r', 'notch none', enter);
	expect(planOf(session).space.room.shape.kind).toBe('box');
});

test('bounds that leave no place for a sub: the search says so and what stands stays', async () => {
	const {session, press} = planned();
	press('r', 'walkway floor 0m 3.6m 0m 4.6m', enter, 's');
	await searched(session);
	expect(planOf(session).found.filter(({name}) => name.kind === 'oneMore')).toEqual([]);
	expect(noteOf(session)).toMatch(/no place|free/i);
});

test('a thing is taken by its name, moved by arrows with the bass live, and kept as a variant', () => {
	const {session, press} = planned();
	const before = planOf(session).now.live;
	press('m', 'subwoofer 2', enter, 'left', 'left', 'down');
	const {moving} = planOf(session);
	expect(moving!.places.subs[1]![0]).toBeCloseTo(before.subs[1]![0] - 0.2, 6);
	expect(moving!.places.subs[1]![1]).toBeCloseTo(before.subs[1]![1] + 0.1, 6);
	expect(moving!.live.judged.meanDb).not.toBe(before.judged.meanDb);
	press(enter);
	expect(planOf(session).kept).toHaveLength(1);
	expect(planOf(session).cursor).toBe(1);
	press('m', 'nothing of the kind', enter);
	expect(noteOf(session)).toContain('is none of them');
});

test('a wall stops what is moved', () => {
	const {session, press} = planned();
	press('m', '1', enter, '+', 'left');
	expect(noteOf(session)).toContain('wall');
	expect(planOf(session).moving!.places.subs[0]).toEqual(planOf(session).now.places.subs[0]);
});

test('a search fills the ladder, “not here” keeps a place from coming back, and the chosen row is planned', async () => {
	const {session, press, files} = planned();
	press('s');
	await searched(session);
	const {found} = planOf(session);
	expect(found.map(({name}) => name.kind)).toEqual(expect.arrayContaining(['rung', 'oneMore', 'wall']));
	const two = found.findIndex(({name}) => name.kind === 'rung' && name.lifted === 2);
	const refused = found[two]!.arrangement.subs[0]!;
	while (planOf(session).cursor > 0) press('up');
	for (let i = 0; i <= two; i++) press('down');
	press('n', '1 the reading corner', enter);
	expect(kept(files).room.features?.at(-1)).toMatchObject({kind: 'notHere', note: 'the reading corner'});
	press('s');
	await searched(session);
	for (const {arrangement, name} of planOf(session).found)
		if (name.kind === 'rung')
			for (const at of arrangement.subs.filter(sub => !planOf(session).now.places.subs.includes(sub)))
				expect(Math.hypot(at[0] - refused[0], at[1] - refused[1])).toBeGreaterThan(0.3);
	press('l');
	const frame = drawIn(80, 24, <App session={session} />).frame();
	expect(frame).toMatch(/Nothing is carried|from the .* wall/);
	press('l', 'p');
	expect([...files.written.keys()][0]).toContain('-moves.txt');
	while (planOf(session).cursor > 0) press('up');
	press('down', enter);
	expect(session.screen().kind).toBe('walk');
	const plan = kept(files).planned;
	expect(plan!.places.map(({id}) => id)).toEqual(expect.arrayContaining(['seat1', 'sub1', 'sub2']));
	expect(plan!.withinMetres).toBe(0.08);
	expect(plan!.costDb).toBeGreaterThanOrEqual(0);
}, 120_000);

test('a search can be stopped, and keys are taken while it runs', async () => {
	const {session, press} = planned();
	press('s');
	await new Promise(resolve => setTimeout(resolve, 60));
	press('v');
	expect(planOf(session).view).toBe('curve');
	expect(planOf(session).search).toBeDefined();
	press('s');
	expect(planOf(session).search).toBeUndefined();
	expect(noteOf(session)).toContain('Stopped');
});

/** Searches as another thread would do them, a step whenever the test asks for it. */
function searchesElsewhere() {
	let tell: (news: SearchNews) => void = () => {};
	let work: ReturnType<typeof searchProfile> | undefined;
	let stops = 0;
	const searches: Searches = {
		order({profile}) {
			work = searchProfile(structuredClone(profile), adjustNetwork(profile));
			return true;
		},
		stop() {
			stops++;
			work = undefined;
		},
		onNews: listener => {
			tell = listener;
		},
	};
	return {
		searches,
		isAtWork: () => work !== undefined,
		stops: () => stops,
		fail: () => tell({kind: 'searchTrouble', text: 'no thread'}),
		/** Works on until a row was found, or to the end. */
		workOn(isEnough: (rows: number) => boolean = () => false) {
			while (work) {
				const next = work.next();
				// What crosses threads is copied.
				if (next.done) tell(structuredClone({kind: 'searched', rows: next.value}));
				else tell(structuredClone({kind: 'searching', step: next.value}));
				if (next.done || isEnough(next.value.rows.length)) return;
			}
		},
	};
}

test('a search on another thread shows how far it is, takes keys meanwhile, and stops with the best so far', () => {
	const other = searchesElsewhere();
	const {session, press} = planned('2.4m', other.searches);
	press('s');
	expect(other.isAtWork()).toBe(true);
	other.workOn(rows => rows > 0);
	expect(planOf(session).found.length).toBeGreaterThan(0);
	expect(drawIn(80, 24, <App session={session} />).frame()).toMatch(/Searching: .*%/);
	press('v');
	expect(planOf(session).view).toBe('curve');
	press('s');
	expect(noteOf(session)).toContain('best so far');
	expect(planOf(session).found.length).toBeGreaterThan(0);
	expect(other.stops()).toBe(1);
	press('s');
	other.workOn();
	expect(planOf(session).search).toBeUndefined();
	expect(planOf(session).found.map(({name}) => name.kind)).toContain('wall');
	press('s', 'q', 'q', 'q');
	expect(session.screen().kind).toBe('home');
	expect(other.isAtWork()).toBe(false);
});

test('a search that is begun and left by keys that arrive together is ended', () => {
	const other = searchesElsewhere();
	const {session} = planned('2.4m', other.searches);
	session.press([...pressesOf('s', {}), ...pressesOf('s', {})]);
	expect(planOf(session).search).toBeUndefined();
	expect(other.isAtWork()).toBe(false);
});

test('where the other thread fails, the search goes on here', async () => {
	const other = searchesElsewhere();
	const {session, press} = planned('2.4m', other.searches);
	press('s');
	other.fail();
	await searched(session);
	expect(planOf(session).found.length).toBeGreaterThan(0);
});

test('keys that arrive together are all taken, in order; what was pasted is none', () => {
	const {session, press} = planned();
	const before = planOf(session).now.places.subs[1]!;
	press('m2', enter, 'left', 'left', '--', 'left');
	const {moving} = planOf(session);
	// Two steps of 10 cm, one of 2 cm.
	expect(moving!.places.subs[1]![0]).toBeCloseTo(before[0] - 0.22, 6);
	press(enter);
	const at = planOf(session).view;
	press('lovely weather for a search');
	expect(planOf(session).view).toBe(at);
	expect(planOf(session).search).toBeUndefined();
});

test('a screen reader hears the plan in words', () => {
	const {session} = planned();
	const frame = drawIn(80, 24, <App session={session} />, true).frame();
	expect(frame).toContain('from the left wall');
	expect(frame).not.toMatch(/[⠁-⣿]/u);
});
