/** `Reference seat: Sofa middle`; a seat that bears that very name is told once. */
export function referenceSeatText(name: string): string {
	const lead = 'Reference seat';
	return name === lead ? lead : `${lead}: ${name}`;
}
