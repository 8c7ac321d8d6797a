import {outputFolder} from '../platform/outputFolder.ts';
import type {Profile} from '../profile/types.ts';
import {waveFile} from '../science/signal/waveFile.ts';
import type {RoundSize} from '../study/hearing/roundCode.ts';
import {loudnessLoop, type RoundFile, roundContent, roundFile} from '../study/playing/roundFile.ts';

/** Name of the loop that sets the loudness. */
export const loopName = 'round-loudness.wav';

/**
Writes the file of a recorded round, and the loop for its loudness.

@throws {Trouble} If the disk or the folder refuses, or a file stands there and may not be replaced.
*/
export function writeRoundFile(
	profile: Pick<Profile, 'channels'>,
	size: RoundSize,
	folder: string,
	replaces: boolean,
): RoundFile {
	const file = roundFile(profile, size);
	const write = outputFolder(folder, [file.file, loopName], replaces);
	write(loopName, waveFile(loudnessLoop(file)));
	write(file.file, waveFile(roundContent(file)));
	return file;
}
