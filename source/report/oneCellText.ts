/**
Latin letters, dashes, quotes, arrows, signs, boxes, blocks, shapes, the tick and braille: one cell each, known without a
look-up. The build puts the same test in front of Ink's own measuring.
*/
export const oneCellText =
	/^[\u0020-\u007e\u00a1-\u00ac\u00ae-\u017f\u2010-\u2027\u2030-\u205e\u2190-\u21ff\u2200-\u22ff\u2500-\u25fc\u2713\u2800-\u28ff]*$/;
