import type {Profile} from '../../../source/profile/types.ts';
import {lineCable as line, named, speakerCable as speaker} from './cables.ts';

/** The cables of this year's cellar: rack in the niche of the left wall, runs along the skirting and through the riser. */
export function cellarWiring2026(): NonNullable<Profile['wiring']> {
	return {
		equipment: [{id: 'receiver', leftWallMetres: 0.3, frontWallMetres: 1.9, heightMetres: 0.55}],
		connections: named([
			speaker('FL', 2.4, 'skirting, left wall'),
			speaker('FR', 6.6, 'skirting, screen wall'),
			speaker('FC', 4.6, 'skirting, screen wall'),
			speaker('SiL', 3.6, 'duct on the left wall'),
			speaker('SiR', 10.9, 'skirting, screen wall and right wall'),
			speaker('BL', 5.2, 'skirting, left wall'),
			speaker('BR', 9.1, 'through the riser'),
			speaker('TpSiL', 4.9, 'duct under the ceiling'),
			speaker('TpSiR', 7.1, 'duct under the ceiling'),
			line('bass 1', 'receiver/LFE1', 'sub1/line in', 6.2, 'skirting, screen wall'),
			line('bass 2', 'receiver/LFE2', 'sub2/line in', 3.5, 'skirting, left wall'),
			{
				id: 'mains rack',
				from: 'strip/1',
				to: 'receiver/mains',
				kind: 'mains',
				label: 'mains rack',
				runMetres: 1.3,
			},
			{
				id: 'mains sub2',
				from: 'strip/3',
				to: 'sub2/mains',
				kind: 'mains',
				label: 'mains sub2',
				runMetres: 3.4,
			},
		]),
		parallelRuns: [{mains: 'mains-sub2', signal: 'bass-2', parallelMetres: 2.6, gapMetres: 0.08}],
		outlets: [{id: 'strip', name: 'Strip in the niche', kind: 'strip', volts: 230, limitAmperes: 10}],
		loads: [
			{name: 'Receiver', on: 'strip', watts: 480},
			{name: 'Sub at the screen', on: 'strip', watts: 350, powerFactor: 0.7},
			{name: 'Sub beside the riser', on: 'strip', watts: 350, powerFactor: 0.7},
		],
	};
}
