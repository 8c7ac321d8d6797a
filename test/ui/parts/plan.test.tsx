import {renderToString} from 'ink';
import stringWidth from 'string-width';
import {expect, test} from 'vitest';
import {Plan} from '../../../source/ui/parts/plan.tsx';
import {exampleScene} from '../../report/plan/exampleScene.ts';
import {readAloud} from '../screenReader.ts';

test.each([60, 80, 120, 160])('Plan keeps its lines whole at %i columns', columns => {
	const frame = renderToString(<Plan scene={exampleScene()} lengthUnit="m" columns={columns} rows={22} />, {
		columns,
	});
	const lines = frame.split('\n');
	expect(lines.length).toBeLessThanOrEqual(22);
	expect(Math.max(...lines.map(line => stringWidth(line)))).toBeLessThanOrEqual(columns);
	expect(frame).toContain('From above');
});

test('Plan is read aloud as sentences without a drawing', () => {
	const words = readAloud(<Plan scene={exampleScene()} lengthUnit="m" columns={80} rows={22} />, 200);
	expect(words).toContain('Front left: 0.75 m from the left wall');
	expect(words).not.toMatch(/[⠀-⣿]/);
});
