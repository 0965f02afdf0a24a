/** A period as people say it: a code that is a number, such as `p3`, as `period 3`; others as they are. */
export function namePeriod(code: string): string {
  const figure = /^p?\.?\s*(\d+)$/i.exec(code)?.[1];
  return figure === undefined ? code : `period ${figure}`;
}
