import {expect, test} from 'vitest';
import {seatBars} from '../../../source/report/arrangement/seatBars.ts';
import {octaveFractionGrid} from '../../../source/study/room/frequencies.ts';

const frequencies = octaveFractionGrid(20, 120, 12);
const seats = [{name: 'Sofa middle', levelsDb: frequencies.map(hertz => 10 * Math.sin(hertz / 10))}];

test('no label of the scale is cut and no line is too wide, whatever the width', () => {
	for (let columns = 22; columns <= 90; columns++) {
		const lines = seatBars(frequencies, seats, columns);
		for (const line of lines) expect(line.length).toBeLessThanOrEqual(columns);
		const [, ...labels] = /^ *(.*) Hz$/.exec(lines.at(-1)!)![0]!.trim().split(/ +/);
		for (const label of labels.slice(0, -1)) expect(['30', '40', '60', '80', '100', '120']).toContain(label);
	}
});
