type PrintedConductor = {readonly awg: number} | {readonly areaSquareMillimetres: number};

/** A conductor as it is printed on the reel: `16 AWG` or `2.5 mm²`. */
export function conductorText(conductor: PrintedConductor): string {
	return 'awg' in conductor ? `${conductor.awg} AWG` : `${conductor.areaSquareMillimetres} mm²`;
}
