/**
Takes keys named `__proto__` out of a parsed file, in place. As own keys they do no harm by themselves, but code that
copies objects key by key would set a prototype with them.

@param text - The text it was parsed from: without a trace of the name in it, nothing needs to be walked.
*/
export function withoutPrototypeKeys(root: object, text: string): object {
	if (!/__proto__|\\u00(?:5f|70|72|6f|74)/i.test(text)) return root;
	const open: object[] = [root];
	for (let one = open.pop(); one !== undefined; one = open.pop()) {
		if (Object.hasOwn(one, '__proto__')) Reflect.deleteProperty(one, '__proto__');
		for (const value of Object.values(one) as unknown[]) {
			if (typeof value === 'object' && value !== null) open.push(value);
		}
	}

	return root;
}
