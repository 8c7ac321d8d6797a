/** Units that lengths are shown in: feet and inches, decimal feet, metres, centimetres. Files hold metres. */
export const lengthUnits = ['ft-in', 'ft', 'm', 'cm'] as const;
export type LengthUnit = (typeof lengthUnits)[number];
