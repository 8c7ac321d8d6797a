/** One line of what is typed in: a channel of the receiver or an output of the bass processor. All text, empty where unknown. */
export type DialRow = {
	readonly name: string;
	readonly crossover: string;
	readonly timing: string;
	readonly trim: string;
	readonly polarity: string;
};

/** Where a thing stands, in distances that a tape can be held to. */
export type PlaceRow = {
	readonly name: string;
	readonly acrossFrom: string;
	readonly alongFrom: string;
	readonly height: string;
	readonly toSeat: string;
};

export type CableRow = {
	readonly label: string;
	readonly from: string;
	readonly to: string;
	readonly length: string;
	readonly conductor: string;
};

/** The page for the cabinet door, as words; how it looks is the renderers' business. */
export type SheetContent = {
	readonly title: string;
	readonly date: string;
	/** `Settings as kept on 2026-03-01`, or that they are computed and nobody has typed them in. */
	readonly origin: string;
	/** What makes the page unreliable: stale settings, readings after it, nothing measured. */
	readonly warnings: readonly string[];
	readonly timingHeading: string;
	readonly receiver: readonly DialRow[];
	readonly processor: readonly DialRow[];
	readonly afterDialling: readonly string[];
	readonly places: readonly PlaceRow[];
	readonly cables: readonly CableRow[];
	/** The recorded response in words; empty where none was recorded. */
	readonly response: string;
	/** What was planned against what stands; empty where nothing was chosen. */
	readonly planned: readonly string[];
	/** Temperature, reference seat, target, meter: what one needs to repeat the measurement. */
	readonly conditions: readonly string[];
	readonly cautions: readonly string[];
};
