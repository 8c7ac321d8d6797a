import {listed} from '../../profile/names.ts';
import type {TapeMove, TapeTerm, WayStep} from '../../study/placement/way.ts';
import type {Say} from './say.ts';

const directions: Readonly<Record<WayStep['axis'], readonly [back: string, forth: string]>> = {
	across: ['to the left', 'to the right'],
	along: ['towards the screen wall', 'towards the back wall'],
	up: ['lower', 'higher'],
};

/** A move in words, such as "0.11 m to the left and 0.04 m higher". */
export function stepsText(steps: readonly WayStep[], {length}: Say): string {
	return listed(
		steps.map(({axis, metres}) => `${length(Math.abs(metres))} ${directions[axis][metres > 0 ? 1 : 0]}`),
	);
}

/** Where a thing stands, such as "0.92 m from the left wall, 1.10 m above the floor". */
export function placesText(places: readonly TapeTerm[], {length, name}: Say): string {
	return places
		.map(({from, metres}) =>
			from === 'floor' ? `${length(metres)} above the floor` : `${length(metres)} from the ${name(from)}`,
		)
		.join(', ');
}

/** A move to make, such as "slide it 0.11 m to the left; then 0.92 m from the left wall, 2.87 m to Sofa middle". */
export function wayText({steps, places, from, metres}: TapeMove, say: Say): string {
	const verb = steps.length === 1 && steps[0]!.axis === 'up' ? 'put it' : 'slide it';
	const at = [placesText(places, say), `${say.length(metres)} to ${say.name(from)}`]
		.filter(Boolean)
		.join(', ');
	return `${verb} ${stepsText(steps, say)}; then ${at}`;
}

/** The ways to bring one speaker right, name and all: "Front left: slide it …; or slide it …". */
export function waysText(ways: readonly TapeMove[], say: Say): string {
	return `${say.name(ways[0]!.moves)}: ${ways.map(way => wayText(way, say)).join('. Or ')}.`;
}
