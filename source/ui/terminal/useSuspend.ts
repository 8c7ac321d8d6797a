import {useStdin, useStdout} from 'ink';
import {useCallback, useEffect, useState} from 'react';

/** Longer than the drawing of a frame takes. */
const drawnMs = 50;
const showCursor = '\u001b[?25h';
const hideCursor = '\u001b[?25l';

/**
Ctrl-Z as everywhere in a terminal: the process stops and the shell has the terminal, until `fg` brings it back.

@returns Whether the process is about to stop, so that nothing is to be drawn; and what starts it.
*/
export function useSuspend(): {readonly isAway: boolean; readonly suspend: () => void} {
	const [isAway, setAway] = useState(false);
	const {setRawMode, isRawModeSupported} = useStdin();
	const {stdout} = useStdout();
	useEffect(() => {
		if (!isAway) return;
		const timer = setTimeout(() => {
			if (isRawModeSupported) setRawMode(false);
			stdout.write(showCursor);
			stop();
			// Runs when the process goes on; at once where nothing can stop it, as without a shell.
			setTimeout(() => {
				if (isRawModeSupported) setRawMode(true);
				stdout.write(hideCursor);
				setAway(false);
			}, drawnMs);
		}, drawnMs);
		return () => clearTimeout(timer);
	}, [isAway, setRawMode, isRawModeSupported, stdout]);
	return {isAway, suspend: useCallback(() => setAway(true), [])};
}

function stop(): void {
	try {
		process.kill(process.pid, 'SIGTSTP');
	} catch {
		// Windows has no such signal: the key does nothing there.
	}
}
