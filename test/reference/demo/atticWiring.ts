import type {Profile} from '../../../source/profile/types.ts';
import {lineCable as line, named, speakerCable as speaker} from './cables.ts';

/** The cables of this year's arrangement: rack at the right of the screen wall, runs along the skirting and the knee wall. */
export function atticWiring2026(): NonNullable<Profile['wiring']> {
	return {
		equipment: [
			{id: 'receiver', leftWallMetres: 3.05, frontWallMetres: 0.35, heightMetres: 0.45},
			{id: 'processor', leftWallMetres: 3.05, frontWallMetres: 0.35, heightMetres: 0.3},
		],
		connections: named([
			speaker('FL', 4.1, 'skirting, screen wall'),
			speaker('FR', 2.2, 'skirting, screen wall'),
			speaker('FC', 2.1, 'skirting, screen wall'),
			speaker('LS', 8.4, 'skirting, left wall'),
			speaker('RS', 6.3, 'skirting, right wall'),
			speaker('TpFL', 6.2, 'rafter, front'),
			speaker('TpFR', 4.6, 'rafter, front'),
			speaker('TpBL', 9.3, 'rafter, back'),
			speaker('TpBR', 7.4, 'rafter, back'),
			line('bass', 'receiver/LFE1', 'processor/in LFE1', 0.6, 'in the rack'),
			line('bass A', 'processor/A', 'sub1/line in', 3.6, 'skirting, screen wall'),
			line('bass B', 'processor/B', 'sub2/line in', 7.2, 'skirting, right wall'),
			{
				id: 'mains rack',
				from: 'strip/1',
				to: 'receiver/mains',
				kind: 'mains',
				label: 'mains rack',
				runMetres: 1.2,
			},
			{id: 'mains sub2', from: 'strip/3', to: 'sub2/mains', kind: 'mains', label: 'mains sub2', runMetres: 7},
		]),
		parallelRuns: [{mains: 'mains-sub2', signal: 'bass-B', parallelMetres: 5, gapMetres: 0.06}],
		outlets: [{id: 'strip', name: 'Strip in the rack', kind: 'strip', volts: 230, limitAmperes: 10}],
		loads: [
			{name: 'Receiver', on: 'strip', watts: 450},
			{name: 'Bass processor', on: 'strip', watts: 15},
			{name: 'Sub at the screen', on: 'strip', watts: 350, powerFactor: 0.7},
			{name: 'Sub at the back', on: 'strip', watts: 350, powerFactor: 0.7},
		],
	};
}
