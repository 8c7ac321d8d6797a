import type {Profile} from '../../profile/types.ts';
import {remarkLines} from '../../report/remarks.ts';
import {sayIn} from '../../report/said/say.ts';
import type {SearchNews} from '../../study/arrangement/orders.ts';
import {planTolerance} from '../../study/arrangement/tolerance.ts';
import type {Press} from '../keys/press.ts';
import {moveTexts} from '../planning/panel.ts';
import {
	openPlan,
	type Planning,
	searchHere,
	stopSearch,
	withAllFound,
	withPlan,
	withStep,
	workOn,
} from '../planning/planning.ts';
import {pressPlan} from '../planning/reduce.ts';
import {movesIn, rowAtCursor} from '../planning/rows.ts';
import {startNextRound} from '../walk/carry.ts';
import {withoutStakes} from '../walk/tape/stakeOut.ts';
import {dayOf} from './day.ts';
import {openHome} from './openHome.ts';
import {openWalk} from './openWalk.ts';
import type {AppScreen, PlanningScreen, World} from './screen.ts';

/** How long a slice of a search may take before keys are looked at, ms. */
const sliceMs = 12;

/** The planning of a file's room; home with a word where it cannot be read or is no room yet. */
export function openPlanning(world: World, file: string, isShipped = false): AppScreen {
	const loaded = world.files.load(file);
	if (!loaded.ok) return openHome(world, [{kind: 'no', text: loaded.text}], file);
	const held = isShipped ? undefined : world.files.hold(file);
	if (held && !held.ok) return openHome(world, [{kind: 'no', text: held.text}], file);
	const plan = openPlan(loaded.profile);
	if ('findings' in plan) {
		world.files.release(file);
		const {profile} = loaded;
		const [, , ...lines] = remarkLines(plan.findings, 500, sayIn(profile, profile.lengthUnit ?? 'm'));
		return openHome(world, [{kind: 'no', text: lines.join(' ').replaceAll('  - ', '')}], file);
	}

	return {kind: 'planning', file, mark: loaded.mark, plan, ...(isShipped && {isShipped})};
}

/** One key in planning. What changes the room is on disk before this returns, or its refusal is told. */
export function pressPlanning(screen: PlanningScreen, press: Press, world: World): AppScreen {
	const {plan, wish} = pressPlan(screen.plan, press);
	const after = begun(kept(screen, plan, world), world);
	switch (wish) {
		case 'back':
			return openHome(world, [], screen.file);
		case 'print':
			return printed(after, world);
		case 'choose':
			return chosen(after, world);
		default:
			return after;
	}
}

/** A search that was asked for begins: on another thread, else here in slices. */
function begun(screen: PlanningScreen, {searches}: World): PlanningScreen {
	const {plan} = screen;
	if (!plan.search || plan.search.work || screen.isSearched)
		return {...screen, isSearched: isElsewhere(plan)};
	if (searches?.order({kind: 'search', profile: plan.profile})) return {...screen, isSearched: true};
	return {...screen, plan: searchHere(plan)};
}

const isElsewhere = ({search}: Planning): boolean => search !== undefined && !search.work;

/** Whether somebody on another thread searches for this screen. */
export const isSearchedElsewhere = (screen: AppScreen): boolean =>
	screen.kind === 'planning' && isElsewhere(screen.plan);

/** What comes from whoever searches on another thread. Where that fails, the search goes on here. */
export function tellPlanning(screen: AppScreen, news: SearchNews): AppScreen {
	if (screen.kind !== 'planning' || !isElsewhere(screen.plan)) return screen;
	const {plan} = screen;
	switch (news.kind) {
		case 'searching': {
			const next = withStep(plan, news.step);
			return next === plan ? screen : {...screen, plan: next};
		}

		case 'searched':
			return {...screen, isSearched: false, plan: withAllFound(plan, news.rows)};
		case 'searchTrouble':
			return {...screen, isSearched: false, plan: searchHere(plan)};
	}
}

/** Whether there is work to go on with while nobody types. */
export const hasWork = (screen: AppScreen): screen is PlanningScreen =>
	screen.kind === 'planning' && screen.plan.search?.work !== undefined;

/** Goes on with a search for a slice. */
export function workOnPlanning(screen: PlanningScreen, {now}: World): PlanningScreen {
	const until = now().getTime() + sliceMs;
	return {...screen, plan: workOn(screen.plan, () => now().getTime() >= until)};
}

const noted = (screen: PlanningScreen, text: string, kind: 'note' | 'no' = 'note'): PlanningScreen => ({
	...screen,
	plan: {...screen.plan, notes: [{kind, text}]},
});

/** The planning with a file of its own: one that comes with the program is copied first. */
function owned(screen: PlanningScreen, {files}: World): PlanningScreen | {readonly refused: string} {
	const {isShipped = false, ...rest} = screen;
	if (!isShipped) return screen;
	const copied = files.copy(screen.file);
	if (!copied.ok) return {refused: copied.text};
	const held = files.hold(copied.file);
	return held.ok ? {...rest, file: copied.file, mark: copied.mark} : {refused: held.text};
}

function kept(screen: PlanningScreen, plan: Planning, world: World): PlanningScreen {
	if (plan.profile === screen.plan.profile) return {...screen, plan};
	const own = owned(screen, world);
	if ('refused' in own) return noted(screen, own.refused, 'no');
	const saved = world.files.save(own.file, plan.profile, own.mark);
	return saved.ok ? {...own, mark: saved.mark, plan} : noted(own, saved.text, 'no');
}

function printed(screen: PlanningScreen, world: World): PlanningScreen {
	const own = owned(screen, world);
	return 'refused' in own ? noted(screen, own.refused, 'no') : writtenBeside(own, world);
}

function writtenBeside(screen: PlanningScreen, {files}: World): PlanningScreen {
	const {plan, file} = screen;
	const lines = moveTexts(plan, 78).map(line => line.replace(/^ {2}/, ''));
	const written = files.writeBeside(file, '-moves.txt', `${plan.profile.name}\n\n${lines.join('\n')}\n`);
	return written.ok ? noted(screen, `Written to ${written.path}.`) : noted(screen, written.text, 'no');
}

/**
Saves the chosen row as planned and opens the walk, which begins with marking it on the floor. Where things were read
where they stand today, that stays the old profile's: the plan becomes a new round.
*/
function chosen(screen: PlanningScreen, world: World): AppScreen {
	const plan = stopSearch(screen.plan);
	const row = rowAtCursor(plan);
	const moves = movesIn(plan, row);
	if (row.name.kind === 'oneMore' || row.name.kind === 'wall')
		return noted(
			screen,
			'This row is a question of its own: it is not lifted but bought, or another room. See below.',
		);
	if (moves.length === 0 && row.name.kind === 'now' && plan.profile.planned === undefined)
		return noted(screen, 'As it stands nothing has to be planned: the walk measures it.');
	const ids = moves.map(({id}) => id);
	const planned = withoutStakes(withPlan(plan, moves, planTolerance(plan.bench, row.places)), ids);
	const isRead = (planned.tape ?? []).some(
		({from, to, setAside}) => !setAside && (ids.includes(from) || ids.includes(to)),
	);
	if (!isRead) {
		const own = owned(screen, world);
		if ('refused' in own) return noted(screen, own.refused, 'no');
		const saved = world.files.save(own.file, atStakeOut(planned), own.mark);
		if (!saved.ok) return noted(own, saved.text, 'no');
		return openWalk(world, own.file) ?? openHome(world);
	}

	const next = startNextRound(planned, {
		name: `${plan.profile.name}, planned`,
		date: dayOf(world.now()),
		moved: ids,
	});
	const created = world.files.create(atStakeOut(next));
	if (!created.ok) return noted(screen, created.text, 'no');
	return openWalk(world, created.file) ?? openHome(world);
}

/** The walk goes on at the first question that is open, which is the stake-out. */
const atStakeOut = (profile: Profile): Profile => ({...profile, walk: {...profile.walk, prompt: undefined}});
