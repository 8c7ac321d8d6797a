import type {HearingFinding} from './facts.ts';

/** What makes a whole playing useless: nothing is taken from it. */
const spoiling = new Set<HearingFinding['code']>([
	'heard-clipped',
	'heard-gain-control',
	'heard-loudness-levelled',
	'heard-voice-mode',
	'heard-samples-dropped',
	'heard-clock-far',
	'heard-folded',
	'heard-upmixed',
	'heard-same-speaker',
	'heard-sub-slept',
	'heard-microphone-moved',
]);

/** What makes the line that it is about useless, and leaves the others. */
const spoilingLine = new Set<HearingFinding['code']>([
	'heard-silent',
	'heard-disturbed',
	'heard-wanders',
	'heard-exchanged',
	'heard-lfe-silent',
]);

/** Whether something that was found spoils the whole playing. */
export function isSpoiled(findings: readonly HearingFinding[]): boolean {
	return findings.some(({code}) => spoiling.has(code));
}

/** Channels whose lines are not to be taken. */
export function spoiledLines(findings: readonly HearingFinding[]): ReadonlySet<string> {
	return new Set(findings.filter(({code}) => spoilingLine.has(code)).flatMap(({about}) => about));
}
