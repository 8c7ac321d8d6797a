/**
Amounts as multiples of a step that add up to the total as it is shown: what rounding leaves goes to the largest of them, where
it is least noticed.

@param step - Smallest difference that is shown, in the unit of the amounts; above 0.
@returns In the order given.
*/
export function addingUp(amounts: readonly number[], total: number, step: number): number[] {
	if (amounts.length === 0) return [];
	const counts = amounts.map(amount => Math.round(amount / step));
	const left = Math.round(total / step) - counts.reduce((sum, count) => sum + count, 0);
	const largest = amounts.reduce(
		(best, amount, index) => (Math.abs(amount) > Math.abs(amounts[best]!) ? index : best),
		0,
	);
	return counts.map((count, index) => (index === largest ? count + left : count) * step);
}
