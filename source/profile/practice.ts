/*
What is assumed where nobody measured or stated it: common practice or judgement without a source, unless one is named.
Each figure has its unit in its name, its reason above it, and one user or several that must agree.
*/

/* Levels and the meter. */

/** Level of the test signal at the seat where the profile sets no target, dB: loud enough over a room's background, easy on ears. */
export const usualTargetDb = 75;

/** Level of a line's band by one recorded point, standard deviation, dB: the recorder's colour is the same for all lines. Judgement, no source. */
export const recordedLevelSigmaDb = 0.3;

/** Two readings of the same thing with a hand-held meter differ by about this, one standard deviation. */
export const usualMeterSigmaDb = 0.5;

/** What a stated meter sigma weighs against the repeats' own: as much as four of them, three degrees of freedom. */
export const meterPriorFreedom = 3;

/**
Noise that speakers are metered with where a reading does not say: the third-octaves from 400 Hz to 2.5 kHz, above any
crossover and below where directivity and air matter. The choice is judgement.

@see IEC 61260-1:2014 for the band limits: 10^2.6·10^−0.05 and 10^3.4·10^0.05 Hz.
*/
export const usualMainsBand = {kind: 'pink', fromHertz: 355, toHertz: 2818} as const;

/**
Noise that subs are metered with where a reading does not say: the third-octaves from 31.5 to 100 Hz, what a sub plays
with the LFE channel's low-pass at 120 Hz or above. The choice is judgement.

@see IEC 61260-1:2014 for the band limits: 10^1.5·10^−0.05 and 10^2·10^0.05 Hz.
*/
export const usualSubBand = {kind: 'pink', fromHertz: 28.2, toHertz: 112.2} as const;

/** A weighting that takes away more than this leaves little of the signal for the meter, dB. */
export const largeWeightingDb = 6;

/** Subs that gain more than this by being together than in-phase addition allows were misread, dB. */
export const beyondCoherentDb = 1.5;

/** Subs that together make this much less than in phase work against each other, dB. */
export const againstEachOtherDb = 3;

/** A common change below this is not heard and not worth a key press, nor is one below the box's own step, dB. */
export const leastMasterChangeDb = 0.5;

/**
What the points read cannot tell of a seat, one standard deviation, dB: an ear alone; two points; three to five. From
simulated rooms: pink noise of 355 to 2818 Hz against the mean of 250 to 8000 Hz over nine points within 30 cm.
*/
export const seatSigmaDb = {one: 0.35, two: 0.3, several: 0.25} as const;

/** What the band cannot tell of speakers whose data are unlike, dB. Judgement, no source. */
export const unlikeSigmaDb = 0.3;

/** A test signal in a home is not softer than the one, nor louder than the other, dB. */
export const testSignalDb = {least: 30, most: 130} as const;

/** Another channel's level this far away is asked about: more than trims of ±10 dB even out. */
export const farFromOthersDb = 12;

/* Tape and timing. */

/** Metric tapes are marked in millimetres; finer than that is not read where no step is stated. */
export const usualTapeStepMetres = 0.001;

/**
An end of the tape is held this well by hand, one standard deviation, metres. Nothing is published on it: from simulated
rounds in which an ear was held to 10 mm and everything else to 6 mm, and judgement, until one's own repeats say better.
*/
export const usuallyHeldMetres = {seat: 0.012, centre: 0.007, plane: 0.007} as const;

/** Speed of sound that receivers compute with where they do not say, m/s. */
export const usualReceiverSpeed = 343;

/** The net must be surer than the direct reading by a tenth to be worth the words; share of its sigma. */
export const surerShare = 0.9;

/** Repeats of a length that differ by less are not worth a word, metres. */
export const leastSpreadMetres = 0.02;

/** A speaker's centre is not closer to an ear than this, metres. */
export const leastEarMetres = 0.3;

/** Left and right that differ by more than this share of the distance, and by this much, are asked about. */
export const askedAsymmetry = {share: 0.25, metres: 0.3} as const;

/** No home room is longer where nobody gave its size; longer readings are a slip of the unit, metres. */
export const longestHomeMetres = 15;

/** A distance to enter this far from the tape's looks like a slip of the hand, metres: a foot. Judgement. */
export const strikingEntryMetres = 0.3;

/** Subs on one output that arrive farther apart are worth a word, ms. */
export const leastApartMs = 0.5;

/** Above the one chance a repeat is worth its minute; below the other it is not. */
export const repeatChance = {worthwhile: 0.3, pointless: 0.1} as const;

/** A point of the tape net counts as determined, or still as weak, up to this worst standard uncertainty, metres. */
export const placedSigmaMetres = {determined: 0.05, weak: 0.3} as const;

/* Places. */

/** Within this of the nominal angle nobody can hear a difference, nor place a speaker better, degrees. */
export const nominalDegrees = 1;

/** Where no range is published, a larger deviation is flagged, degrees. */
export const flaggedDegrees = 5;

/** A speaker keeps this far from a wall and the ceiling unless it is closer already, metres. */
export const speakerClearanceMetres = 0.05;

/** A seat nearer to a wall than this is no seat, metres. */
export const seatClearanceMetres = 0.3;

/** Above this a speaker is moved from a ladder, metres. */
export const ladderMetres = 1.8;

/** Where the centre is heard this far from the picture's middle, the ear notices. */
export const centreApartDegrees = 10;

/* Boxes that are not described. */

/** Crossovers from 40 to 200 Hz in even steps, hertz: no receiver's menu, only what none is likely to exceed. */
export const everyTenHertz: readonly number[] = Array.from({length: 17}, (_, index) => 40 + 10 * index);

/** Stands in for a receiver that is not described yet, so that a first round shows something. */
export const assumedReceiver = {
	timing: {kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 100},
	trim: {stepDb: 0.5, minimumDb: -10, maximumDb: 10},
	crossover: {choicesHertz: everyTenHertz as number[], scope: 'per channel'},
	subOutputs: 2,
} as const;

/* Crossovers. */

/**
What a crossover is judged by, written down: each term times its weight is a cost in dB-like points, and the choice
with the smallest sum leads.
*/
export const crossoverWeights = {
	/**
	Points for each dB of ripple beyond `rippleAlikeDb` more than the smoothest choice has. In a reverberant room the ripple of
	the sum in the open ranks next to nothing (rank correlation 0.1 over 240 simulated channels).
	*/
	ripple: 1,
	/** Points for each dB of drive above `driveFreeDb` that is left at the speaker's own limit. */
	drive: 0.25,
	/** Points for each dB that the cone is relieved less than by `reliefFreeDb`. */
	excursion: 0.1,
	/** Points for each octave above `localisableFromHertz`. */
	localisable: 2,
	/** Further points for each octave above `localisedFromHertz`. */
	localised: 4,
} as const;

/** Ripple on paper that differs by less than this is alike in a room, dB. From simulated rooms. */
export const rippleAlikeDb = 1;

/** Cone movement that counts as relieved enough, dB less than without the high-pass. Judgement, no source. */
export const reliefFreeDb = 6;

/** What wins where choices cost within `drawPoints` of each other, hertz: the rule of cinema practice. */
export const usualCrossoverHertz = 80;
export const drawPoints = 0.5;

/** Misalignment that a crossover should bear, ms. */
export const toleranceMs = 1;

/** Drive at the speaker's limit that counts as spared: what a second-order high-pass leaves one octave below its corner. */
export const driveFreeDb = -12;

/** From here up a sub begins to be heard as a place of its own, hertz: the rule of cinema practice. */
export const localisableFromHertz = 80;

/**
From here up listeners noticed the sub with programme-like sound in a listening room, hertz.

@see A. Kelloniemi, J. Ahonen, O. Paajanen, V. Pulkki, Detection of Subwoofer Depending on Crossover Frequency and
Spatial Angle between Subwoofer and Main Speaker, AES 118th Convention, paper 6431 (2005).
*/
export const localisedFromHertz = 120;

/** Limit taken for a speaker of which none is known, hertz at −3 dB: a small box. */
export const assumedLimitHertz = 80;

/** Low end taken for a sub of which none is known: vented, hertz at −3 dB. */
export const assumedSubLimitHertz = 30;

/** A speaker that reaches this low may play full range, hertz at −3 dB. */
export const fullRangeLimitHertz = 40;

/** High-pass and low-pass of bass management where the receiver's are not given. */
export const usualHighPass = {kind: 'butterworth', order: 2} as const;
export const usualLowPass = {kind: 'linkwitz-riley', order: 4} as const;

/** Upper end of the LFE channel, hertz: content is 20–120 Hz. @see ITU-R BS.775-3, Annex 7 (known as a quotation). */
export const lfeTopHertz = 120;

/** What playback adds to the LFE channel, dB: it is recorded that much lower. @see ITU-R BS.775-3, Annex 7 (known as a quotation). */
export const lfeGainDb = 10;

/** Choices ranked where the receiver's are not known, hertz. */
export const usualChoicesHertz = everyTenHertz.filter(hertz => hertz <= 150);

/**
Largest mean residuals that count as met, dB, and the standard deviation that a meter put down anew adds: 12 cm move noise by
0.55 dB and tones by 1.1 dB, in holes by 2.8 dB. From simulated rooms, with the looks below. Who marks the place of the
meter may ask for more.
*/
export const proofLimits = {
	unmarked: {noiseDb: 1.9, toneDb: 4},
	marked: {noiseDb: 1.5, toneDb: 3},
	placeSigma: {noiseDb: 0.55, toneDb: 1.1},
} as const;

/**
When a row of the second round is settled, as shares of its limit: at once within the one, by two looks beyond the other,
by the mean of all after the last look worth taking. A look farther than `mended` from those before it is of other
settings. From simulated rooms.
*/
export const proofLooks = {clearlyWithin: 0.65, clearlyBeyond: 1.5, most: 4, mended: 3} as const;

/** No forecast for a tone expected this far below its parts, dB: in a hole the meter's place decides. From simulated rooms. */
export const deepestForecastDb = 6;

/** Nor for subs together whose cross term is weaker than this share of full addition. From simulated rooms. */
export const leastCrossShare = 0.5;

/** Nor for what is expected less than this above the background, dB: below it a reading says nothing (ISO 3744 stops at 6). */
export const leastAboveBackgroundDb = 3;

/** What the gains of fronts and centre must add up to for a blend to be kept, dB: less is within what two readings each can tell. */
export const leastGainsDb = 0.8;

/** A change between subs is kept where noise through the LFE channel reads louder by so much, dB. Judgement, no source. */
export const leastPairGainDb = 0.5;

/** What fronts or centre may read softer with it, dB: two readings each do not tell less apart. */
export const mostPairLossDb = 0.3;
