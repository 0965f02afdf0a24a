/**
 * The rules that a set of OneRoster files is held to, each by a name of its own: 1EdTech OneRoster v1.2 CSV Binding,
 * section 3 (files, rows, data types) and the tables of each file; v1.1 by its "Final CSV Tables".
 */
export const BUNDLE_RULES = [
  /** The archive's name ends in `.zip`. */
  'zip-name',
  /** Its files are stored or deflated (RFC 1951). */
  'zip-method',
  /** Every file lies at the root. */
  'at-root',
  /** Only files that the version knows, in its own letter case. */
  'file-known',
  'manifest-there',
  'manifest-heads',
  /** Each property is named once. */
  'manifest-once',
  /** Every property that the version requires is named. */
  'manifest-whole',
  'manifest-known',
  /** `absent`, `bulk` or `delta` for files, and the versions that are known. */
  'manifest-value',
  /** A file that is said to be there is there, and one that is said to be absent is not. */
  'manifest-true',
  'utf8',
  'no-carriage-return',
  /** Quotes as in RFC 4180. */
  'quotes',
  'heads-once',
  /** The table's columns, in its order and letter case; others only at the right. */
  'heads-order',
  /** No file without rows. */
  'has-rows',
  /** As many fields as heads in each row. */
  'field-count',
  'required',
  /** Sets with all rows: `status` and `dateLastModified` stay empty. */
  'bulk-blank',
  /** Sets of changes: both are filled, and the status is `active` or `tobedeleted`. */
  'delta-filled',
  'guid',
  'boolean',
  'date',
  'date-time',
  'year',
  'integer',
  'float',
  /** One of the table's words, or one that begins with `ext:`. */
  'known-word',
  'score-scale',
  /** No id twice in one table. */
  'id-once',
  /** What a row points to is in the set. */
  'link',
  /** Results come with all that they cannot stand without. */
  'results-need',
  /** The end is exclusive, so it is later than the start. */
  'end-after-start',
  /** A school year is called by the year in which it ends. */
  'school-year',
  /** Only a teacher is the primary one of a class. */
  'primary-teacher',
  /** A score lies within its line item's range, ends included. */
  'score-range',
] as const;

/** The name of a rule. */
export type BundleRule = (typeof BUNDLE_RULES)[number];

/** One rule broken at one place. */
export interface BundleFault {
  readonly code: 'bundle-rule-broken';
  readonly rule: BundleRule;
  /** The file's name in the set; empty for the archive itself. */
  readonly file: string;
  /** Record of the file, the heads being 1; null where it is about the file as a whole. */
  readonly record: number | null;
  /** Null where it is about the record as a whole. */
  readonly column: string | null;
  /** What stands there, at most 80 characters; null where nothing does. */
  readonly found: string | null;
}

/** One rule, and where it is broken. */
export interface RuleCheck {
  readonly rule: BundleRule;
  readonly faults: readonly BundleFault[];
}

/** What of a fault’s place is known, each part as in {@link BundleFault}. */
export type SlipPlace = Partial<Pick<BundleFault, 'file' | 'record' | 'column' | 'found'>>;

/** A fault; what is not told of its place is empty or null. */
export function buildSlip(rule: BundleRule, place: SlipPlace = {}): BundleFault {
  const { file = '', record = null, column = null, found = null } = place;
  return { code: 'bundle-rule-broken', rule, file, record, column, found: found?.slice(0, 80) ?? null };
}
