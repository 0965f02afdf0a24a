import type { BundleRule } from './bundle-fault.ts';
import type { Column, ValueKind } from './column.ts';

/** An id: up to 255 of these characters (v1.2 CSV Binding, section 3, "GUID"; its "0-1" is a misprint of "0-9"). */
const GUID = /^[0-9A-Za-z.\-_/@]{1,255}$/;

const SCALE_STEP = /^\{[^{}:]+:[^{}]+\}(?:,\{[^{}:]+:[^{}]+\})*$/;

function isDay(text: string): boolean {
  const match = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text);
  if (!match) return false;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}

function isInstant(text: string): boolean {
  const match = /^(\d{4}-\d\d-\d\d)T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(?:\.\d+)?Z$/.exec(text);
  return match !== null && isDay(match[1] ?? '');
}

const CHECKS: Readonly<Partial<Record<ValueKind, { rule: BundleRule; fits: (text: string) => boolean }>>> = {
  guid: { rule: 'guid', fits: (text) => GUID.test(text) },
  guids: { rule: 'guid', fits: (text) => splitList(text).every((id) => GUID.test(id)) },
  boolean: { rule: 'boolean', fits: (text) => text === 'true' || text === 'false' },
  date: { rule: 'date', fits: isDay },
  'date-time': { rule: 'date-time', fits: isInstant },
  year: { rule: 'year', fits: (text) => /^\d{4}$/.test(text) },
  integer: { rule: 'integer', fits: (text) => /^-?\d+$/.test(text) },
  float: { rule: 'float', fits: (text) => /^-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?$/.test(text) },
  'score-scale': { rule: 'score-scale', fits: (text) => SCALE_STEP.test(text) },
};

/** The items of a list field, which are joined by commas. */
export function splitList(text: string): readonly string[] {
  return text === '' ? [] : text.split(',').map((item) => item.trim());
}

/** The rule that a field breaks; null where it breaks none. `status` depends on the kind of set and is not judged. */
export function findValueRule(column: Column, text: string): BundleRule | null {
  if (text === '') return column.isRequired ? 'required' : null;
  if (column.kind === 'one-of') {
    return column.words.includes(text) || text.startsWith('ext:') ? null : 'known-word';
  }
  const check = CHECKS[column.kind];
  return check && !check.fits(text) ? check.rule : null;
}
