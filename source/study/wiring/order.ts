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
		{code: 'all-off', cables: []},
		{code: 'overheads', cables: ids(cable => cable.kind === 'speaker' && isAbove(cable))},
		{code: 'speakers', cables: ids(cable => cable.kind === 'speaker' && !isAbove(cable))},
		{code: 'lines', cables: ids(({kind}) => kind === 'line')},
		{
			code: 'others',
			cables: ids(({kind}) => kind === 'video' || kind === 'network' || kind === 'control'),
		},
		{code: 'power-last', cables: ids(({kind}) => kind === 'mains')},
	];
	return steps.filter(
		({cables: listed}, index) => index === 0 || index === steps.length - 1 || listed.length > 0,
	);
}
