import {startWork} from '../platform/worker.ts';
import {visibleText} from '../profile/visibleText.ts';
import type {SearchNews, SearchOrder} from '../study/arrangement/orders.ts';
import type {Searches} from '../ui/searches.ts';

/** Searches as the app sees them: each in a worker of its own, so that ending one ends nothing else. */
export function appSearches(): Searches {
	let work: ReturnType<typeof startWork<SearchOrder, SearchNews>> | undefined;
	let listener: (news: SearchNews) => void = () => {};
	const stop = () => {
		work?.stop();
		work = undefined;
	};
	return {
		order(order) {
			stop();
			try {
				work = startWork<SearchOrder, SearchNews>(
					news => listener(news),
					text => {
						work = undefined;
						listener({kind: 'searchTrouble', text: visibleText(text)});
					},
				);
			} catch {
				// Not built, or no thread is to be had: whoever asked goes on by itself.
				return false;
			}

			work.ask(order);
			return true;
		},
		stop,
		onNews(tell) {
			listener = tell;
		},
	};
}
