/**
Something that the user can put right: a file that cannot be read, a wrong call, a full disk.
Each problem is a sentence for the user; the program shows them all and ends with exit code 2.
*/
export class Trouble extends Error {
	override readonly name = 'Trouble';
	readonly problems: readonly string[];

	constructor(problems: string | readonly string[]) {
		const all = typeof problems === 'string' ? [problems] : problems;
		super(all.join('\n'));
		this.problems = all;
	}
}
