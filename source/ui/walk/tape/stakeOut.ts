import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {formatNumber} from '../../../profile/units/decimalText.ts';
import {formatLength} from '../../../profile/units/length.ts';
import {type StakePoint, stakedThing, stakePoints} from '../../../study/arrangement/stakeOut.ts';
import {shapeOf} from '../../../study/room/shapeOf.ts';
import {walkAnswer, withAnswer, withoutAnswer} from '../answered.ts';
import {lengthUnitOf} from '../lengthUnits.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';
import {tapedNetworkOf} from '../sceneOf.ts';
import {ladderCaution} from './ladder.ts';
import {tapePrompt} from './tapePrompt.ts';

const howId = 'tape:stake:how';
const carriedId = 'tape:stake:carried';
const crossId = (id: string) => `tape:stake:cross:${id}`;
const carryCaution = 'Heavy things in two, from the knees. Unplug a subwoofer before it is lifted.';

/**
The stake-out: where something is planned, everything gets a cross on the floor first, the seat before all, each from
two walls; then it is carried, read once in its place and checked once. What is read there are tape readings.
*/
export function stakePrompts(profile: Profile): Prompt<Profile>[] {
	if (profile.planned?.withinMetres === undefined) return [];
	const {shape} = shapeOf(profile.room, tapedNetworkOf(profile).room);
	const points = shape ? stakePoints(profile, shape) : [];
	if (points.length === 0) return [];
	const how = walkAnswer(profile, howId);
	const letterOf = (point: StakePoint) => String.fromCodePoint(65 + points.indexOf(point));
	const cross = (point: StakePoint) => crossPrompt(profile, point, letterOf(point), how === 'together');
	const readings = (point: StakePoint) => readingPrompts(profile, point, letterOf(point));
	return [
		choicePrompt<Profile>({
			id: howId,
			stop: 'tape',
			question: 'Something is planned. Who is at hand?',
			about: `${points.length} things get a cross on the floor before anything is lifted. Tape, chalk or masking tape.`,
			explain: 'Two go thing by thing; alone one marks everything, carries, and reads afterwards by letter.',
			isRequired: true,
			chosen: how === undefined ? undefined : how === 'together' ? 0 : 1,
			offers: [
				{label: 'Two of us: one thing at a time', put: subject => withAnswer(subject, howId, 'together')},
				{
					label: 'Alone: all crosses, then carry, then read by letter',
					put: subject => withAnswer(subject, howId, 'alone'),
				},
			],
		}),
		...(how === undefined
			? []
			: how === 'together'
				? points.flatMap(point => [cross(point), ...readings(point)])
				: [...points.map(cross), carryPrompt(profile), ...points.flatMap(readings)]),
	];
}

/** The profile with a stake-out that begins anew: what moves gets its cross again, and is carried again. */
export function withoutStakes(profile: Profile, moved: readonly string[]): Profile {
	return [howId, carriedId, ...moved.map(crossId)].reduce(withoutAnswer, profile);
}

function crossPrompt(
	profile: Profile,
	point: StakePoint,
	letter: string,
	isCarriedNow: boolean,
): Prompt<Profile> {
	const id = crossId(point.id);
	const isDown = walkAnswer(profile, id) !== undefined;
	const where = point.walls
		.map(({plane, metres}) => `${short(profile, metres)} from ${theWall(profile, plane)}`)
		.join(', ');
	const touching = point.walls
		.flatMap(({plane, metres, touch}) =>
			touch
				? [`its ${touch.at} ${short(profile, metres - touch.beforeMetres)} from ${theWall(profile, plane)}`]
				: [],
		)
		.join(', ');
	const box = touching === '' ? '' : ` The box then stands with ${touching}.`;
	const up = point.isOverhead
		? ` Above it, ${short(profile, point.heightMetres)} up: stand the laser on the cross, straight up.`
		: '';
	return {
		...choicePrompt<Profile>({
			id,
			stop: 'tape',
			question: `Cross ${letter}, ${nameOf(profile, point.id)}: ${where}`,
			about: `${isCarriedNow ? 'Mark it on the floor, then carry it there.' : 'Mark it on the floor with its letter; nothing is lifted yet.'}${box}${up}`,
			explain: 'Each distance at right angles to its wall; the cross is where both meet.',
			isRequired: true,
			chosen: isDown ? 0 : undefined,
			usual: 0,
			offers: [{label: 'It is there', put: subject => withAnswer(subject, id, 'down')}],
			...(isCarriedNow && {caution: point.isOverhead ? ladderCaution : carryCaution}),
		}),
	};
}

function carryPrompt(profile: Profile): Prompt<Profile> {
	const isDone = walkAnswer(profile, carriedId) !== undefined;
	return choicePrompt<Profile>({
		id: carriedId,
		stop: 'tape',
		question: 'Carry everything to its cross',
		about: 'Each middle over its cross. Then it is read once in its place, by its letter.',
		explain: 'Get a second pair of hands for the heavy ones; a cross waits.',
		isRequired: true,
		chosen: isDone ? 0 : undefined,
		usual: 0,
		caution: carryCaution,
		offers: [{label: 'Everything stands', put: subject => withAnswer(subject, carriedId, 'done')}],
	});
}

/** One reading in place and one check, from the two walls. */
function readingPrompts(profile: Profile, point: StakePoint, letter: string): Prompt<Profile>[] {
	const {withinMetres = 0, costDb} = profile.planned ?? {};
	const cost =
		costDb === undefined
			? ''
			: costDb < 0.2
				? ', which costs under 0.2 dB'
				: `, which costs ${formatNumber(costDb, 1)} dB`;
	return point.walls.map(({plane, metres, touch}, i): Prompt<Profile> => {
		const {beforeMetres = 0} = touch ?? {};
		const prompt = tapePrompt(profile, {
			id: `tape:stake:${point.id}:${plane}`,
			stop: 'tape',
			from: point.id,
			to: plane,
			question: `${letter} ${nameOf(profile, point.id)}${i === 0 ? '' : ', check'}: ${touch ? `from its ${touch.at} ` : ''}to ${theWall(profile, plane)}`,
			about: `Planned ${short(profile, metres - beforeMetres)}. Good enough within ${short(profile, withinMetres)}${cost}.`,
			explain: touch
				? `From the wall, at right angles, to the ${touch.at} of the box; the rest of the box is added here.`
				: 'From the wall, at right angles, to the ear or the middle of the cone.',
			beforeMetres,
			isRequired: true,
			row: point.id,
			...(point.isOverhead && {caution: ladderCaution}),
		});
		return {
			...prompt,
			take(subject, text, taking) {
				const taken = prompt.take(subject, text, taking);
				if (taken.kind !== 'taken') return taken;
				const verdict = againstPlanText(taken.next, point, plane);
				return verdict === undefined ? taken : {...taken, hint: verdict};
			},
		};
	});
}

/** Whether a thing stands where it was planned, by all that was read of it, in tape terms. */
function againstPlanText(
	profile: Profile,
	point: StakePoint,
	plane: StakePoint['walls'][number]['plane'],
): string | undefined {
	const {readings, offMetres, isGoodEnough} = stakedThing(profile, point);
	if (!readings.some(one => one.plane === plane)) return undefined;
	const off = `${short(profile, offMetres)} off the plan${readings.length > 1 ? ' in all' : ''}`;
	if (isGoodEnough) return offMetres < 0.005 ? 'Just as planned.' : `${off}: good enough, leave it.`;
	const ways = readings
		.filter(one => Math.abs(one.offMetres) >= 0.005)
		.map(
			one =>
				`${short(profile, Math.abs(one.offMetres))} ${one.offMetres > 0 ? 'nearer to' : 'farther from'} ${theWall(profile, one.plane)}`,
		);
	return `${off}: move it ${ways.join(' and ')} and read it again, or let it be.`;
}

const theWall = (profile: Profile, plane: string) => `the ${nameOf(profile, plane).toLowerCase()}`;

function short(profile: Profile, metres: number): string {
	const unit = lengthUnitOf(profile);
	return formatLength(metres, unit, {stepMetres: unit.startsWith('ft') ? 0.0254 / 2 : 0.01});
}
