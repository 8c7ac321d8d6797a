const modulus = 2147483647;

/**
Evenly spread numbers between 0 and 1 from a seed: the same numbers for the same seed on every machine.

@param seed - Any finite number.
@returns A function that gives the next number, both ends excluded.
@see S. K. Park, K. W. Miller, Random number generators: good ones are hard to find, Comm. ACM 31 (1988) 1192–1201:
multiplier 16807, modulus 2^31 − 1. From seed 1 the 10 000th state is 1043618065.
*/
export function seededRandom(seed: number): () => number {
	let state = Math.abs(Math.trunc(seed)) % modulus || 1;
	return () => {
		state = (state * 16807) % modulus;
		return state / modulus;
	};
}
