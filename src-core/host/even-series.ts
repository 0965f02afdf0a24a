/** Items of an even series of unknown length, never more than twice as many as wanted. */
export interface EvenSeries<Item> {
  /** In the order they came. */
  readonly kept: readonly Item[];
  push(item: Item): void;
}

/** A series that leaves out every other item, of those to come too, each time that twice as many as `most` are held. */
export function createEvenSeries<Item>(most: number): EvenSeries<Item> {
  const kept: Item[] = [];
  let every = 1;
  let seen = 0;
  return {
    kept,
    push: (item) => {
      if (seen % every === 0) kept.push(item);
      seen += 1;
      if (kept.length <= 2 * most) return;
      every *= 2;
      kept.splice(0, kept.length, ...kept.filter((_, at) => at % 2 === 0));
    },
  };
}
