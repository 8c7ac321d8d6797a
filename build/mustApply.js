/**
A plugin that ends the build with an error where any of its hooks was never of use: a package that changed under a patch
would otherwise go out unpatched, and nobody would notice.

@param plugin - An esbuild plugin whose hooks return nothing where they do not apply.
*/
export const mustApply = plugin => ({
	...plugin,
	setup(build) {
		const uses = new Map();
		const counted = kind => (options, callback) => {
			const hook = `${kind} ${options.filter}${options.namespace ? ` in ${options.namespace}` : ''}`;
			uses.set(hook, 0);
			build[kind](options, async args => {
				const result = await callback(args);
				if (result !== undefined && result !== null) uses.set(hook, uses.get(hook) + 1);
				return result;
			});
		};

		plugin.setup({...build, onLoad: counted('onLoad'), onResolve: counted('onResolve')});
		build.onEnd(() => {
			const unused = [...uses].filter(([, count]) => count === 0).map(([hook]) => hook);
			return {
				errors: unused.map(hook => ({
					text: `${plugin.name}: ${hook} matched nothing; the build must be looked at again.`,
				})),
			};
		});
	},
});

/**
A text with every occurrence of something replaced.

@throws {Error} If it does not occur.
*/
export function replaceKnown(text, sought, replacement, where) {
	const replaced = text.replaceAll(sought, replacement);
	if (replaced === text)
		throw new Error(`${where}: ${sought} is not there; the build must be looked at again.`);
	return replaced;
}
