// JSON has no word for what is unbounded, and unbounded uncertainties are meant: a clip without a date. An object
// with this one key stands for them; no data of ours has such a key.
const UNBOUNDED = '∞';

/** Data as text for a wire, infinities included. */
export function buildWireText(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) =>
    inner === Number.POSITIVE_INFINITY || inner === Number.NEGATIVE_INFINITY
      ? { [UNBOUNDED]: Math.sign(inner) }
      : inner,
  );
}

/** What {@link buildWireText} made a text of. Throws a SyntaxError where the text is not JSON. */
export function readWireText(text: string): unknown {
  return JSON.parse(text, (_, inner: unknown) => {
    if (typeof inner !== 'object' || inner === null || !Object.hasOwn(inner, UNBOUNDED)) return inner;
    const [sign] = Object.values(inner);
    return typeof sign === 'number' && Object.keys(inner).length === 1
      ? sign * Number.POSITIVE_INFINITY
      : inner;
  });
}
