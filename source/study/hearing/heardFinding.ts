/** What hearing found, as facts. Times in ms or seconds, levels in dB, frequencies in hertz; sentences are made elsewhere. */
export type HeardFacts = {
	// About a recording as a whole.
	notOurFile: object;
	startMissing: object;
	// About one playing.
	clipped: {readonly samples: number};
	cutShort: {readonly missing: readonly string[]; readonly missingSeconds: number};
	swallowedStart: {readonly missingBursts: number};
	gainControl: {readonly raisedDb: number};
	loudnessLevelled: {readonly raisedDb: number};
	gatedFloor: {readonly floorDbfs: number};
	voiceMode: {readonly droppedDb: number};
	samplesDropped: {readonly ms: number; readonly fromSeconds: number; readonly toSeconds: number};
	clockFar: {readonly ppm: number};
	foldedToTwo: {readonly channels: readonly string[]};
	upmixed: {readonly channels: readonly string[]};
	sameSpeaker: {readonly other: string};
	lfeSilent: object;
	lfeNotRaised: {readonly lowDb: number};
	subSlept: {readonly lowDb: number};
	// About one line of a playing.
	silent: object;
	disturbed: {readonly aboveDb: number};
	tooNoisy: {readonly octavesHertz: readonly number[]};
	wanders: {readonly ms: number};
	laterStronger: {readonly laterMs: number; readonly strongerDb: number};
	// Held against what is known of the room.
	late: {readonly ms: number};
	early: {readonly ms: number};
	exchanged: {readonly other: string};
	twinReversed: {readonly other: string};
	reversed: object;
	untaped: {readonly metres: number; readonly sigmaMetres: number};
	// Between playings at one spot.
	microphoneMoved: {readonly centimetres: number};
	levelChanged: {readonly db: number};
};

export type HeardCode = keyof HeardFacts;
export type HeardKind = 'problem' | 'doubt' | 'note';

/** One finding; `about` is a channel where it concerns one line alone. */
export type HeardFinding = {
	readonly [Code in HeardCode]: {
		readonly code: Code;
		readonly kind: HeardKind;
		readonly about?: string;
	} & HeardFacts[Code];
}[HeardCode];
