import type {FindingOf, NoFacts} from '../../profile/finding.ts';
import type {WaveFault} from '../../science/signal/waveRead.ts';

/** What hearing a recorded round finds, with what each code needs to be said. */
export type HearingFacts = {
	// The recording as a whole.
	'heard-no-round': {readonly seconds: number};
	'heard-file-unreadable': {readonly fault: WaveFault | {readonly code: 'noDecoder'}};

	// One playing of it.
	'heard-clipped': {readonly samples: number};
	'heard-cut': {readonly missingChannels: readonly string[]; readonly missingSeconds: number};
	'heard-start-swallowed': {readonly missingBursts: number};
	'heard-gain-control': {readonly raisedDb: number};
	'heard-loudness-levelled': {readonly raisedDb: number};
	'heard-floor-gated': {readonly floorDbfs: number};
	'heard-voice-mode': {readonly droppedDb: number};
	'heard-samples-dropped': {readonly ms: number; readonly fromSeconds: number; readonly toSeconds: number};
	'heard-clock-far': {readonly ppm: number};
	'heard-folded': NoFacts;
	'heard-upmixed': NoFacts;
	'heard-same-speaker': NoFacts;
	'heard-lfe-silent': NoFacts;
	'heard-lfe-not-raised': {readonly lowDb: number};
	'heard-sub-slept': {readonly lowDb: number};

	// One line of a playing.
	'heard-silent': NoFacts;
	'heard-disturbed': {readonly aboveDb: number};
	'heard-noisy-octaves': {readonly octavesHertz: readonly number[]};
	'heard-wanders': {readonly ms: number};
	'heard-later-stronger': {readonly laterMs: number; readonly strongerDb: number};

	// Held against tape, twins and boxes.
	'heard-late': {readonly ms: number};
	'heard-early': {readonly ms: number};
	/** Of two lines the first sounds later against the second than distances say: which is off is open. */
	'heard-one-late': {readonly ms: number};
	'heard-exchanged': NoFacts;
	'heard-twins-differ': NoFacts;
	'heard-reversed': NoFacts;
	'heard-not-taped': {readonly metres: number; readonly sigmaMetres: number};

	// Between playings at one spot.
	'heard-microphone-moved': {readonly metres: number};
	'heard-level-changed': {readonly changeDb: number};
	'heard-state-unknown': NoFacts;
	/** Subs moved by another delay than was asked for. */
	'heard-delay-other': {readonly ms: number; readonly askedMs: number};

	// One playing alone, by its LFE sweep.
	'heard-apart-by-lfe': {readonly db: number; readonly ms?: number};
	/** `ms` is absent where the two do not even push alike. */
	'heard-lfe-disagrees': {readonly db: number; readonly ms?: number};

	// What a recorder without a curve can and cannot tell.
	'heard-no-microphone-curve': NoFacts;
	'heard-low-cut': {readonly belowDb: number};
};

export type HearingFinding = FindingOf<HearingFacts>;
