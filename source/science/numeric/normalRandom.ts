/**
Normally distributed numbers of mean 0 and standard deviation 1.

@param uniform - Gives numbers evenly spread between 0 and 1, both ends excluded.
@see Box and Muller, Annals of Mathematical Statistics 29 (1958), 610.
*/
export function normalRandom(uniform: () => number): () => number {
	return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
