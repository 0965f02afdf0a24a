import { availableParallelism } from 'node:os';
import PQueue from 'p-queue';

/** Two files at once for each core: reading waits for the disk more than for the processor. */
const FILES_PER_CORE = 2;

/** Works through many items side by side; results in the order of the items. Rejects with the first failure. */
export function mapAll<Item, Result>(
  items: readonly Item[],
  work: (item: Item) => Promise<Result>,
  atOnce: number = availableParallelism() * FILES_PER_CORE,
): Promise<Result[]> {
  const queue = new PQueue({ concurrency: atOnce });
  return queue.addAll(items.map((item) => () => work(item)));
}
