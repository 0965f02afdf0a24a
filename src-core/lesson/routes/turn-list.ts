/** A list begun `by` places further on, its head put behind its tail; any whole number, as turns repeat. */
export function turnList<Item>(items: readonly Item[], by: number): readonly Item[] {
  const at = items.length === 0 ? 0 : ((by % items.length) + items.length) % items.length;
  return [...items.slice(at), ...items.slice(0, at)];
}
