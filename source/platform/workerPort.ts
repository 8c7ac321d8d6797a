import {isMainThread, parentPort} from 'node:worker_threads';

/**
Serves orders on this thread, one after the other; nothing where this is no worker.

@param serve - Called for each order; `tell` sends news back.
*/
export function serveOrders<Order, News>(
	serve: (order: Order, tell: (news: News) => void) => Promise<void>,
): void {
	if (isMainThread || !parentPort) return;
	const port = parentPort;
	let last = Promise.resolve();
	port.on('message', (order: Order) => {
		last = last.then(() => serve(order, news => port.postMessage(news)));
	});
}

/** Lets what arrived meanwhile be looked at. */
export function breath(): Promise<void> {
	return new Promise(resolve => setImmediate(resolve));
}
