const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Orders names as people count: `IMG_9.MOV` before `IMG_10.MOV`. Names that differ in case only go by code units. */
export function compareNames(a: string, b: string): number {
  return collator.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);
}
