/** Day of the clock where the user sits, YYYY-MM-DD. */
export function dayOf(date: Date): string {
	const two = (value: number) => String(value).padStart(2, '0');
	return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
