import type {FindingOf, NoFacts} from '../../../profile/finding.ts';

type Shape = {readonly kind: 'butterworth' | 'linkwitz-riley'; readonly order: number};
type Limit = {
	/** The speaker's half-power limit. */
	readonly limitHertz: number;
	/** Whether it is only the usual one of a small box. */
	readonly isAssumed: boolean;
};
type Reach = {readonly limitHertz: number};

/** Why a choice of crossover stands where it does. */
export type CrossoverReasonFacts = {
	'hole-below-limit': Limit & {readonly hertz: number};
	'drive-at-limit': Limit & {readonly takenOffDb: number};
	'cone-spared': {readonly reliefDb: number};
	'ripple-on-paper': {
		readonly rippleDb: number;
		readonly fromHertz: number;
		readonly toHertz: number;
		/** When the sub should arrive after the speaker, ms; negative before it. */
		readonly subDelayMs: number;
		readonly isInverted: boolean;
	};
	'ripple-when-late': {readonly lateMs: number; readonly addedDb: number};
	'sub-located': {readonly aboveHertz: number; readonly isPlain: boolean};
};

/** Whether a speaker may be left without a high-pass. */
export type FullRangeFacts = {
	'no-sub': NoFacts;
	'full-range-not-offered': NoFacts;
	'limit-not-known': NoFacts;
	'as-deep-as-sub': Reach;
	'deep-enough': Reach;
	'not-deep-enough': Reach & {readonly neededHertz: number};
};

/** What findings on crossovers are said with. */
export type CrossoverFacts = CrossoverReasonFacts &
	FullRangeFacts & {
		/** What changes with a neighbouring choice: differences from the one taken. */
		'crossover-step': {
			readonly hertz: number;
			readonly rippleDb: number;
			readonly driveDb: number;
			readonly coneDb: number;
			readonly subDelayMs: number;
			readonly isBelowLimit: boolean;
			readonly isLocated: boolean;
		};
		'crossover-choices-unknown': NoFacts;
		'speaker-limit-unknown': {readonly takenHertz: number};
		'sub-low-limit-unknown': {readonly takenHertz: number};
		'sub-upper-limit-unknown': NoFacts;
		'filter-does-not-exist': {
			readonly filter: 'high-pass' | 'low-pass';
			readonly order: number;
			readonly taken: Shape;
		};
		'high-pass-assumed': {readonly taken: Shape};
		'low-pass-assumed': {readonly taken: Shape};
		'crossover-below-limit': {readonly limitHertz: number; readonly hertz: number};
		'lfe-low-pass-low': {readonly hertz: number; readonly topHertz: number};
	};

export type CrossoverReason = FindingOf<CrossoverReasonFacts & FullRangeFacts>;
export type FullRangeReason = FindingOf<FullRangeFacts>;
export type CrossoverStep = FindingOf<Pick<CrossoverFacts, 'crossover-step'>>;
export type CrossoverFinding = FindingOf<CrossoverFacts>;
