/** What belongs beside the settings for whoever opens the cabinet next. */
export const sheetCautions: readonly string[] = [
	'Ears: turn the volume down before any test noise, and up slowly. At most 8 h at 85 dB(A), 15 min at 100 dB(A).',
	'Everything off and unplugged before a cable is moved. Mains and in-wall work: local codes, a licensed electrician.',
	'Overhead speakers: a firm ladder, a second person, the maker’s mounts; pull on each mount once a year.',
];
