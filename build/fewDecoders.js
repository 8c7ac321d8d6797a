const kept = new Set(['mp3', 'flac', 'opus', 'vorbis', 'mp4', 'aac']);

/**
The decoder library knows some thirty formats and loads each when it is met. Recorders save six of them; the others, one of
which names a package that is not there, are left out and count as unknown.
*/
export const fewDecoders = {
	name: 'few-decoders',
	setup({onResolve, onLoad}) {
		onResolve({filter: /^@audio\/decode-/}, ({path}) =>
			kept.has(path.replace('@audio/decode-', '')) ? undefined : {path, namespace: 'no-decoder'},
		);
		onLoad({filter: /.*/, namespace: 'no-decoder'}, ({path}) => ({
			contents: `throw new Error(${JSON.stringify(`${path} is not part of this program`)}); export default undefined;`,
		}));
	},
};
