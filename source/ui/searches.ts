import type {SearchNews, SearchOrder} from '../study/arrangement/orders.ts';

/** Searches of arrangements on another thread, as the interface sees them: one at a time. */
export type Searches = {
	/** Begins one; false where no thread can be started. */
	readonly order: (order: SearchOrder) => boolean;
	/** Ends it at once. */
	readonly stop: () => void;
	readonly onNews: (listener: (news: SearchNews) => void) => void;
};
