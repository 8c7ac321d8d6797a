import type {Step} from '../../study/wiring/result.ts';

/** What to do at each step of connecting, and the caution that belongs to it. */
const steps: Readonly<Record<Step['code'], {readonly text: string; readonly caution?: string}>> = {
	'all-off': {
		text: 'Switch everything off and pull the mains plugs of receiver, processor and subs.',
		caution: 'Never connect a speaker cable to an amplifier that is on.',
	},
	overheads: {
		text: 'Overhead speaker cables, at the speaker first, then down to the receiver.',
		caution:
			'A ladder on firm ground and somebody holding it; fix overhead speakers as the maker says. In-wall cable and holes in rated walls: local codes, a licensed electrician.',
	},
	speakers: {
		text: 'The other speaker cables, farthest first. Plus to plus at both ends; no stray strand across the terminals.',
	},
	lines: {text: 'Line cables: receiver to processor, processor to subs.'},
	others: {text: 'Picture, network and control cables.'},
	'power-last': {
		text: 'Mains last. Volume down, then switch on: sources, processor, receiver, subs. Off in reverse.',
		caution:
			'Mains work beyond plugging in is for a licensed electrician; follow local codes and the makers’ instructions.',
	},
};

/** A step of connecting with its words. */
export function saidStep(step: Step): Step & {readonly text: string; readonly caution?: string} {
	return {...step, ...steps[step.code]};
}
