import {spawnSync} from 'node:child_process';

/** A reference computes on one thread, as the program does; small matrices only lose by more. */
export const oneThread = {
	OPENBLAS_NUM_THREADS: '1',
	OMP_NUM_THREADS: '1',
	MKL_NUM_THREADS: '1',
};

/**
The first Python that has a package: the system's, where distributions install theirs, else the one on the path.

@throws {Error} If none has; a case that cannot run must not be taken for one that was met.
*/
export function pythonWith(name) {
	const found = ['/usr/bin/python3', 'python3'].find(
		program => spawnSync(program, ['-c', `import ${name}`], {stdio: 'ignore'}).status === 0,
	);
	if (!found)
		throw new Error(`No python3 with ${name}: neither /usr/bin/python3 nor the one on PATH has it.`);
	return found;
}
