/** What belongs beside the settings for whoever opens the cabinet next. */
export const sheetCautions: readonly string[] = [
	'Turn the volume down before any test noise, and keep 85 dB for hours or 100 dB for minutes as the outer limit for ears.',
	'Everything off and unplugged before a cable is moved. Mains and in-wall work: local codes, a licensed electrician.',
	'Overhead speakers: a firm ladder, a second person, the maker’s mounts; pull on each mount once a year.',
];
