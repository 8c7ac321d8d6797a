/**
What a crossover is judged by, written down: each term times its weight is a cost in dB-like points, and the choice
with the smallest sum leads. The sizes are judgement, not measurement: common practice, no source, except where named.
*/
export const crossoverWeights = {
	/** Points for each dB of ripple through the crossover at the best alignment. */
	ripple: 1,
	/** Points for each dB that the ripple grows when the alignment is off by `toleranceMs`. */
	tolerance: 0.5,
	/** Points for each dB of drive above `driveFreeDb` that is left at the speaker's own limit. */
	drive: 0.25,
	/** Points for each octave above `localisableFromHertz`. */
	localisable: 2,
	/** Further points for each octave above `localisedFromHertz`. */
	localised: 4,
} as const;

/** Misalignment that a crossover should bear, ms. */
export const toleranceMs = 1;

/** Drive at the speaker's limit that counts as spared: what a second-order high-pass leaves one octave below its corner. */
export const driveFreeDb = -12;

/**
From here up a sub begins to be heard as a place of its own, hertz.
80 Hz is the rule of cinema practice (common practice, no source).
*/
export const localisableFromHertz = 80;

/**
From here up listeners noticed the sub with programme-like sound in a listening room, hertz.

@see A. Kelloniemi, J. Ahonen, O. Paajanen, V. Pulkki, Detection of Subwoofer Depending on Crossover Frequency and
Spatial Angle between Subwoofer and Main Speaker, AES 118th Convention, paper 6431 (2005).
*/
export const localisedFromHertz = 120;

/** Limit taken for a speaker of which none is known, hertz at −3 dB: a small box. Common practice, no source. */
export const assumedLimitHertz = 80;

/** Low end taken for a sub of which none is known: vented, hertz at −3 dB. Common practice, no source. */
export const assumedSubLimitHertz = 30;

/** A speaker that reaches this low may play full range, hertz at −3 dB. Common practice, no source. */
export const fullRangeLimitHertz = 40;

/** High-pass and low-pass of bass management where the receiver's are not given. Common practice, no source. */
export const usualHighPass = {kind: 'butterworth', order: 2} as const;
export const usualLowPass = {kind: 'linkwitz-riley', order: 4} as const;

/** Upper end of the LFE channel, hertz: content is 20–120 Hz. @see ITU-R BS.775-3, Annex 7. */
export const lfeTopHertz = 120;

/** Choices ranked where the receiver's are not known, hertz. */
export const usualChoicesHertz = [40, 50, 60, 70, 80, 90, 100, 110, 120, 150] as const;
