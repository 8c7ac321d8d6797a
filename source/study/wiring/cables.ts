import {wireSystemOf} from '../../profile/ask/wireSystem.ts';
import type {Connection, Profile} from '../../profile/types.ts';
import {type Conductor, cableLossDb, thinnestConductor} from '../../science/acoustics/cable.ts';
import {readEnd, tidyEnd} from './ends.ts';
import {estimatedRunMetres, usualSlackMetres} from './lengths.ts';
import {neededCables, serves} from './needed.ts';
import type {Cable, Positions} from './result.ts';

function conductorOf({awg, areaSquareMillimetres}: Connection): Conductor | undefined {
	if (areaSquareMillimetres !== undefined) return {areaSquareMillimetres};
	return awg === undefined ? undefined : {awg};
}

/** Impedance of the speaker at either end, where its channel states one. */
function speakerImpedance(
	profile: Profile,
	ends: {readonly from: string; readonly to: string},
): number | undefined {
	const boxes = [readEnd(ends.from).box, readEnd(ends.to).box];
	return profile.channels.find(({id}) => boxes.includes(id))?.speaker?.impedanceOhms;
}

function describe(
	entered: Connection,
	origin: Cable['origin'],
	profile: Profile,
	positions: Positions,
): Cable {
	const estimate =
		entered.runMetres === undefined ? estimatedRunMetres(entered, profile, positions) : undefined;
	const metres = entered.runMetres ?? estimate;
	const run =
		metres === undefined
			? undefined
			: {metres, from: entered.runMetres === undefined ? ('estimated' as const) : ('measured' as const)};
	const slackMetres = entered.slackMetres ?? (metres === undefined ? undefined : usualSlackMetres(metres));
	const cutMetres = metres === undefined ? undefined : metres + (slackMetres ?? 0);
	const impedanceOhms = entered.impedanceOhms ?? speakerImpedance(profile, entered);
	const conductor = conductorOf(entered);
	const isSized = entered.kind === 'speaker' && cutMetres !== undefined && impedanceOhms !== undefined;
	const needs = isSized ? thinnestConductor(cutMetres, impedanceOhms, wireSystemOf(profile)) : undefined;
	const carried = conductor ?? needs;
	return {
		id: entered.id,
		label: entered.label ?? `${entered.from} → ${entered.to}`,
		from: entered.from,
		to: entered.to,
		kind: entered.kind,
		origin,
		route: entered.route,
		run,
		slackMetres,
		cutMetres,
		impedanceOhms,
		conductor,
		needs,
		lossDb: isSized && carried ? cableLossDb(carried, cutMetres, impedanceOhms) : undefined,
		done: entered.done ?? false,
	};
}

/** All cables: those entered, in their order, then those that the arrangement needs and nobody has entered. */
export function cablesOf(profile: Profile, positions: Positions): Cable[] {
	const entered = (profile.wiring?.connections ?? []).map(cable => ({
		...cable,
		from: tidyEnd(profile, cable.from),
		to: tidyEnd(profile, cable.to),
	}));
	const proposed = neededCables(profile).filter(needed => !entered.some(cable => serves(needed, cable)));
	return [
		...entered.map(cable => describe(cable, 'entered', profile, positions)),
		...proposed.map(({id, from, to, kind}) => describe({id, from, to, kind}, 'proposed', profile, positions)),
	];
}
