import {isOverhead} from '../../profile/channels.ts';
import type {Cable, Step} from './result.ts';

const isAbove = ({from, to}: Cable) => isOverhead(from) || to.split('/').some(isOverhead);

/**
The order in which to connect, and then to switch on: everything unplugged first, mains last, amplifiers last on and first off.
Common practice, no source.
*/
export function connectingOrder(cables: readonly Cable[]): Step[] {
	const open = cables.filter(({done}) => !done);
	const ids = (wanted: (cable: Cable) => boolean) => open.filter(wanted).map(({id}) => id);
	const steps: Step[] = [
		{
			text: 'Switch everything off and pull the mains plugs of receiver, processor and subs.',
			cables: [],
			caution: 'Never connect a speaker cable to an amplifier that is on.',
		},
		{
			text: 'Overhead speaker cables, at the speaker first, then down to the receiver.',
			cables: ids(cable => cable.kind === 'speaker' && isAbove(cable)),
			caution:
				'A ladder on firm ground and somebody holding it; fix overhead speakers as the maker says. In-wall cable and holes in rated walls: local codes, a licensed electrician.',
		},
		{
			text: 'The other speaker cables, farthest first. Plus to plus at both ends; no stray strand across the terminals.',
			cables: ids(cable => cable.kind === 'speaker' && !isAbove(cable)),
		},
		{
			text: 'Line cables: receiver to processor, processor to subs.',
			cables: ids(({kind}) => kind === 'line'),
		},
		{
			text: 'Picture, network and control cables.',
			cables: ids(({kind}) => kind === 'video' || kind === 'network' || kind === 'control'),
		},
		{
			text: 'Mains last. Volume down, then switch on: sources, processor, receiver, subs. Off in reverse.',
			cables: ids(({kind}) => kind === 'mains'),
			caution:
				'Mains work beyond plugging in is for a licensed electrician; follow local codes and the makers’ instructions.',
		},
	];
	return steps.filter(
		({cables: listed}, index) => index === 0 || index === steps.length - 1 || listed.length > 0,
	);
}
