// Random profiles. Some are made from the schema itself, so that every field and limit is met, then given ids that
// exist; some are the demos with a few values changed. Both are mostly valid, many of them absurd.

const planes = ['wall:left', 'wall:right', 'wall:front', 'wall:back', 'floor', 'ceiling'];
const words = [
	'Sofa',
	'Front left',
	'é',
	'客厅',
	'<b>',
	'[x](y)',
	"O'Neil",
	'| a',
	'`',
	'0',
	'🙂',
	'a\\b',
	'—',
];

function number(random, {minimum = -1e6, maximum = 1e6, exclusiveMinimum, type}) {
	const low = exclusiveMinimum ?? minimum;
	const kind = random.below(10);
	let value;
	if (kind === 0) value = low;
	else if (kind === 1) value = maximum;
	else if (kind === 2) value = 0;
	else if (kind === 3) value = low + (maximum - low) * random.next();
	else if (kind === 4) value = 10 ** (random.next() * 12 - 6);
	else if (kind === 5) value = random.below(200);
	else value = Number((random.next() * random.pick([1, 4, 10, 100])).toFixed(random.below(4)));
	value = Math.min(maximum, Math.max(low, value));
	return type === 'integer' ? Math.round(value) : value;
}

function text(random, {pattern, maxLength = 200, format}) {
	if (format === 'date') return `20${10 + random.below(80)}-0${1 + random.below(9)}-1${random.below(10)}`;
	if (format === 'date-time') return '2026-04-18T20:00:00Z';
	if (pattern?.includes('A-Za-z')) return random.pick(['a', 'b', 'c', 'A', 'B', 'sub1', 'x-1']);
	if (pattern?.includes('\\/'))
		return `${random.pick(['receiver', 'processor', 'FL', 'sub1', 'x'])}/${random.pick(['in', 'FL', 'A'])}`;
	return Array.from({length: 1 + random.below(3)}, () => random.pick(words))
		.join(' ')
		.slice(0, maxLength);
}

/** A value that a JSON Schema takes, but for rules across fields. */
export function valueFor(random, schema, depth = 0) {
	const forms = schema.anyOf ?? schema.oneOf;
	if (forms) return valueFor(random, random.pick(forms), depth);
	if ('const' in schema) return schema.const;
	if (schema.enum) return random.pick(schema.enum);
	switch (schema.type) {
		case 'number':
		case 'integer':
			return number(random, schema);
		case 'boolean':
			return random.chance(0.5);
		case 'string':
			return text(random, schema);
		case 'array': {
			if (schema.prefixItems) return schema.prefixItems.map(item => valueFor(random, item, depth + 1));
			const {minItems = 0, maxItems = 4} = schema;
			const length = Math.min(maxItems, minItems + random.below(depth > 2 ? 3 : 5));
			return Array.from({length}, () => valueFor(random, schema.items, depth + 1));
		}

		case 'object': {
			const value = {};
			const share = random.pick([0.2, 0.6, 1]);
			for (const [key, inner] of Object.entries(schema.properties ?? {}))
				if (schema.required?.includes(key) || random.chance(share))
					value[key] = valueFor(random, inner, depth + 1);
			if (schema.propertyNames && typeof schema.additionalProperties === 'object')
				for (let count = random.below(4); count > 0; count--)
					value[valueFor(random, schema.propertyNames)] = valueFor(
						random,
						schema.additionalProperties,
						depth + 1,
					);
			return value;
		}

		default:
			return {};
	}
}

/** Gives ids that exist to what refers to others, and puts ranges the right way round: most are valid then. */
function made(random, schema) {
	const profile = valueFor(random, schema);
	const unique = (list, nameOf) =>
		list.filter((one, index) => list.findIndex(other => nameOf(other) === nameOf(one)) === index);
	profile.seats = profile.seats.map((seat, index) => ({...seat, id: `seat${index}`, reference: index === 0}));
	profile.channels = unique(profile.channels, ({id}) => id);
	const has = id => profile.channels.some(channel => channel.id === id);
	const outputs = profile.bassProcessor && [...new Set(profile.bassProcessor.outputs)];
	if (profile.bassProcessor) profile.bassProcessor.outputs = outputs;
	for (const [index, sub] of (profile.subs ?? []).entries()) {
		sub.id = `box${index}`;
		if (!has(sub.fedBy)) profile.channels.push({id: sub.fedBy});
		if (sub.processorOutput && outputs) sub.processorOutput = random.pick(outputs);
		else delete sub.processorOutput;
	}

	const swap = (range, low, high) => {
		if (range && range[low] > range[high]) [range[low], range[high]] = [range[high], range[low]];
	};
	const {receiver, bassProcessor} = profile;
	for (const range of [receiver?.timing, receiver?.trim, bassProcessor?.delay, bassProcessor?.gain])
		for (const unit of ['Metres', 'Ms', 'Db']) swap(range, `minimum${unit}`, `maximum${unit}`);
	for (const key of ['choicesHertz', 'lfeLowPassChoicesHertz']) {
		const choices = receiver?.crossover[key];
		if (choices) receiver.crossover[key] = [...new Set(choices)].sort((a, b) => a - b);
	}

	const sources = [...profile.channels, ...(profile.subs ?? [])].map(({id}) => id);
	const seats = profile.seats.map(({id}) => id);
	const sets = (profile.settings ?? []).map((set, index) => ({...set, id: `set${index}`}));
	if (profile.settings) profile.settings = sets;
	const ends = [...sources, ...seats, ...planes, 'screen'];
	const tapes = random.pick([0, 3, 20]);
	profile.tape = Array.from({length: tapes}, () => ({
		from: random.pick(ends),
		to: random.pick(ends),
		metres: number(random, {minimum: 0, maximum: random.pick([0, 5, 8, 1000])}),
	}))
		.map((one, index) => ({...(profile.tape?.[index] ?? {}), ...one}))
		.filter(({from, to}) => from !== to);
	const meters = random.pick([0, 2, 20]);
	const template = profile.meter ?? [];
	profile.meter = Array.from({length: meters}, (_, index) => {
		const reading = {
			...(template[index % Math.max(1, template.length)] ?? {}),
			decibels: number(random, {minimum: random.pick([-300, 60]), maximum: random.pick([90, 300])}),
			weighting: random.pick(['A', 'C', 'Z']),
			round: random.pick(['first', 'first', 'proof']),
			seat: random.pick(seats),
		};
		reading.source = random.chance(0.2)
			? [...new Set([random.pick(sources), random.pick(sources)])]
			: random.chance(0.1)
				? 'background'
				: random.pick(sources);
		if (typeof reading.inForce === 'string') {
			if (sets.length > 0) reading.inForce = random.pick(sets).id;
			else delete reading.inForce;
		}

		const {signal} = reading;
		if (signal?.kind === 'pink' && signal.fromHertz >= signal.toHertz) delete reading.signal;
		return reading;
	});
	delete profile.responses;
	delete profile.recordings;
	return profile;
}

/** A demo with some of its values changed to others that the schema would take at that place, or to nothing. */
function mutated(random, demo) {
	const profile = structuredClone(demo);
	for (let count = 1 + random.below(6); count > 0; count--) {
		let place = profile;
		let key = random.pick(Object.keys(place));
		while (
			typeof place[key] === 'object' &&
			place[key] !== null &&
			Object.keys(place[key]).length > 0 &&
			!random.chance(0.05)
		) {
			place = place[key];
			key = random.pick(Object.keys(place));
		}

		const value = place[key];
		if (typeof value === 'number')
			place[key] = random.pick([
				value * 2,
				value / 10,
				-value,
				0,
				value + 1e-9,
				1e-4,
				1000,
				value * random.next(),
			]);
		else if (typeof value === 'boolean') place[key] = !value;
		else if (Array.isArray(value))
			place[key] = random.chance(0.5) ? value.slice(0, random.below(value.length + 1)) : [...value, ...value];
		else if (!Array.isArray(place)) delete place[key];
		else place.splice(Number(key), 1);
	}

	return profile;
}

/** Text of a profile: mostly valid. */
export function profileText(random, schema, demos) {
	const profile = random.chance(0.6) ? made(random, schema) : mutated(random, random.pick(demos));
	return JSON.stringify(profile);
}

/** The text with a few bytes changed, so that reading is met with everything. */
export function spoilt(random, input) {
	const bytes = Buffer.from(input);
	for (let count = 1 + random.below(4); count > 0; count--) {
		const at = random.below(bytes.length);
		bytes[at] = random.chance(0.5) ? random.below(256) : random.pick([...Buffer.from('{}[]",:0-e.\\')]);
	}

	return random.chance(0.2) ? bytes.subarray(0, random.below(bytes.length)) : bytes;
}
