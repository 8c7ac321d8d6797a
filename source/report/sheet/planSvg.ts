import {escapeMarkup} from './escape.ts';
import {labelsBeside} from './planLabels.ts';

export type SvgPoint = {
	readonly label: string;
	readonly kind: 'speaker' | 'overhead' | 'sub' | 'seat' | 'screen';
	/** Metres from the left wall and from the screen wall. */
	readonly x: number;
	readonly y: number;
};

/** What the drawing shows. Metres; texts ready made in the reader's unit. */
export type SvgPlan = {
	readonly widthMetres: number;
	readonly lengthMetres: number;
	readonly widthText: string;
	readonly lengthText: string;
	readonly screenWidthMetres?: number;
	readonly points: readonly SvgPoint[];
};

const unitsPerMetre = 100;
const margin = 55;

/** A shape for each kind, so that black-and-white print tells them apart. */
function shape({kind}: SvgPoint, x: number, y: number, screenWidth: number): string {
	switch (kind) {
		case 'speaker':
			return `<rect x="${x - 9}" y="${y - 9}" width="18" height="18" fill="#000"/>`;
		case 'overhead':
			return `<rect x="${x - 9}" y="${y - 9}" width="18" height="18" fill="#fff" stroke="#000" stroke-width="3" stroke-dasharray="6 3"/>`;
		case 'sub':
			return `<circle cx="${x}" cy="${y}" r="13" fill="#fff" stroke="#000" stroke-width="4"/>`;
		case 'seat':
			return `<path d="M${x - 13} ${y + 11}v-14a13 13 0 0 1 26 0v14z" fill="#fff" stroke="#000" stroke-width="3"/>`;
		case 'screen':
			return `<path d="M${x - screenWidth / 2} ${y}h${screenWidth}" stroke="#000" stroke-width="7"/>`;
	}
}

/** Height over width of the whole drawing. */
export const planShape = ({widthMetres, lengthMetres}: SvgPlan): number =>
	(lengthMetres * unitsPerMetre + 2 * margin) / (widthMetres * unitsPerMetre + 2 * margin);

const rounded = (value: number) => Number(value.toFixed(1));

/** The floor plan as inline SVG: screen wall at the top, drawn to scale, with the room's width and length written at it. */
export function planSvg(plan: SvgPlan): string {
	const width = plan.widthMetres * unitsPerMetre;
	const length = plan.lengthMetres * unitsPerMetre;
	// As large on a small room's drawing as on a large one's.
	const letterHeight = Math.round((width + 2 * margin) / 26);
	const screenWidth = (plan.screenWidthMetres ?? plan.widthMetres * 0.4) * unitsPerMetre;
	const points = [...plan.points].sort((a, b) => a.y - b.y || a.x - b.x);
	const shapes = points.map(point =>
		shape(
			point,
			rounded(margin + point.x * unitsPerMetre),
			rounded(margin + point.y * unitsPerMetre),
			rounded(screenWidth),
		),
	);
	const labels = labelsBeside(
		points
			.filter(({kind}) => kind !== 'screen')
			.map(({label, x, y}) => ({text: label, x: margin + x * unitsPerMetre, y: margin + y * unitsPerMetre})),
		{left: margin + 3, top: margin + 3, right: margin + width - 3, bottom: margin + length - 3},
		letterHeight,
	).map(
		({x, y, text, lead}) =>
			`${lead ? `<path d="M${rounded(lead.fromX)} ${rounded(lead.fromY)}L${rounded(lead.toX)} ${rounded(lead.toY)}" stroke="#000" stroke-width="1.5"/>\n` : ''}<text x="${rounded(x)}" y="${rounded(y)}" stroke="#fff" stroke-width="6" paint-order="stroke">${escapeMarkup(text)}</text>`,
	);
	const names = points.map(({kind, label}) => (kind === 'screen' ? 'screen' : label)).join(', ');
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${rounded(width + 2 * margin)} ${rounded(length + 2 * margin)}" role="img" aria-label="${escapeMarkup(`Floor plan, ${plan.widthText} by ${plan.lengthText}: ${names}`)}" font-family="Arial, sans-serif" font-size="${letterHeight}">
<rect x="${margin}" y="${margin}" width="${rounded(width)}" height="${rounded(length)}" fill="none" stroke="#000" stroke-width="5"/>
${shapes.join('\n')}
${labels.join('\n')}
<text x="${rounded(margin + width / 2)}" y="${rounded(margin + length + 38)}" text-anchor="middle">${escapeMarkup(plan.widthText)}</text>
<text x="30" y="${rounded(margin + length / 2)}" text-anchor="middle" transform="rotate(-90 30 ${rounded(margin + length / 2)})">${escapeMarkup(plan.lengthText)}</text>
</svg>`;
}
