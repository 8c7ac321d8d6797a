import {useStdout} from 'ink';
import {useEffect, useState} from 'react';

export type WindowSize = {readonly columns: number; readonly rows: number};

/** Size of the terminal in cells; 80×24 where it is not known yet. */
export function sizeOf(stdout: {readonly columns?: number; readonly rows?: number}): WindowSize {
	return {columns: stdout.columns || 80, rows: stdout.rows || 24};
}

/** Size of the terminal, now and after every resize. */
export function useWindowSize(): WindowSize {
	const {stdout} = useStdout();
	const [size, setSize] = useState(() => sizeOf(stdout));
	useEffect(() => {
		const onResize = () => setSize(sizeOf(stdout));
		onResize();
		stdout.on('resize', onResize);
		return () => {
			stdout.off('resize', onResize);
		};
	}, [stdout]);
	return size;
}
