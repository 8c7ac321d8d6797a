import {expect, test} from 'vitest';
import {readConductor} from '../../../source/profile/units/readConductor.ts';

test.each([
	['16', {awg: 16}],
	['16 AWG', {awg: 16}],
	['#14', {awg: 14}],
	['4 ga', {awg: 4}],
	['2.5', {areaSquareMillimetres: 2.5}],
	['2,5 mm²', {areaSquareMillimetres: 2.5}],
	['4mm2', {areaSquareMillimetres: 4}],
	['70', {areaSquareMillimetres: 70}],
])('“%s” is read', (text, conductor) => {
	expect(readConductor(text)).toMatchObject({kind: 'ok', conductor});
});

test('a bare small whole number is asked about: both are sold', () => {
	const reading = readConductor('4');
	expect(reading).toMatchObject({
		kind: 'ask',
		choices: [{conductor: {areaSquareMillimetres: 4}}, {conductor: {awg: 4}}],
	});
});

test.each(['', 'thick', '41 AWG', '2.5 AWG', '0 mm²', '501 mm²', '-2', '16 m'])('“%s” is refused', text => {
	expect(readConductor(text).kind).toBe('no');
});
