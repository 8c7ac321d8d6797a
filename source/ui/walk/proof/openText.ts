/** What keeps the proof open, in words. */
export function openText(unread: number, again: number, unjudged: number): string {
	return [
		...(unread > 0 ? [`${unread} not read`] : []),
		...(again > 0 ? [`${again} to look at again`] : []),
		...(unjudged > 0 ? [`${unjudged} not judged`] : []),
	].join(', ');
}
