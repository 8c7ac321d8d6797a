/** A question as the lead of what was answered: `Which speakers? 5.1`, `Room width: 4.20 m`. */
export function leadOf(question: string): string {
	return /[?:]$/.test(question) ? question : `${question}:`;
}
