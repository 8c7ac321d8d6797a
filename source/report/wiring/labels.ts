import type {Cable} from '../../study/wiring/result.ts';
import {cellWidth, fitCells} from '../fitCells.ts';
import type {Say} from '../said/say.ts';
import {escapeMarkup} from '../sheet/escape.ts';

export type CableLabel = {
	/** Large: what the cable is. */
	readonly name: string;
	/** Small: where this end goes, and where the other one is. */
	readonly here: string;
	readonly there: string;
};

/** Two labels for each cable, one an end, in the order of the list; ends by their plain names. */
export function cableLabels(cables: readonly Cable[], {name: nameOfEnd}: Pick<Say, 'name'>): CableLabel[] {
	return cables.flatMap(({id, label, from, to}) => {
		// A label made from the two ends would be printed twice; the id is short.
		const name = label === `${from} → ${to}` ? id : label;
		return [
			{name, here: nameOfEnd(from), there: nameOfEnd(to)},
			{name, here: nameOfEnd(to), there: nameOfEnd(from)},
		];
	});
}

/** Labels to print and cut as text: framed, two a line, the pair of one cable side by side. */
export function labelsText(labels: readonly CableLabel[], width: number): string {
	const widest = Math.max(
		...labels.flatMap(({name, here, there}) => [name, `here ${here}`, `to ${there}`].map(cellWidth)),
	);
	const inner = Math.max(10, Math.min(widest, Math.floor((width - 9) / 2)));
	const rule = `+${'-'.repeat(inner + 2)}+`;
	const framed = (text: string) => `| ${fitCells(text, inner)} |`;
	const lines: string[] = [];
	for (let index = 0; index < labels.length; index += 2) {
		const pair = labels.slice(index, index + 2);
		const row = (cellOf: (label: CableLabel) => string) => pair.map(label => framed(cellOf(label))).join(' ');
		lines.push(
			pair.map(() => rule).join(' '),
			row(({name}) => name),
			row(({here}) => `here ${here}`),
			row(({there}) => `to ${there}`),
			pair.map(() => rule).join(' '),
		);
	}

	return `${lines.join('\n')}\n`;
}

/** Labels to print and cut as one HTML page without script: each folds around the cable at the dashed line. */
export function labelsHtml(labels: readonly CableLabel[], title: string): string {
	const one = ({name, here, there}: CableLabel) => {
		const face = `<span><b>${escapeMarkup(name)}</b><br>here ${escapeMarkup(here)}<br>to ${escapeMarkup(there)}</span>`;
		return `<li>${face}${face}</li>`;
	};
	return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeMarkup(title)}</title>
<style>
@page { size: auto; margin: 10mm }
body { font-family: Arial, "Liberation Sans", sans-serif; font-size: 9pt; line-height: 1.15; color: #000; background: #fff; margin: 0 }
ul { list-style: none; margin: 0; padding: 0; display: grid; grid-template-columns: repeat(2, 1fr); gap: 3mm }
li { display: grid; grid-template-columns: 1fr 1fr; border: 0.6pt solid #000; break-inside: avoid }
span { padding: 1.2mm 2mm; overflow-wrap: anywhere }
span + span { border-left: 0.6pt dashed #000 }
b { font-size: 1.25em }
</style>
</head>
<body>
<h1>${escapeMarkup(title)}</h1>
<p>Cut along the full lines, fold at the dashed one around the cable. One label for each end.</p>
<ul>
${labels.map(one).join('\n')}
</ul>
</body>
</html>
`;
}
