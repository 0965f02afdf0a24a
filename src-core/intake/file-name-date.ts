import { localAsUtcMs } from '../media/date-text.ts';
import type { EpochMs } from '../platform/units.ts';

/** What a device's file name says of when it recorded. */
export type FileNameDate =
  /** A clock of the place the device was set to. */
  | { readonly kind: 'local'; readonly local: string; readonly meaning: 'start' | 'unknown' }
  | { readonly kind: 'instant'; readonly ms: EpochMs; readonly meaning: 'start' | 'unknown' }
  /** `YYYY-MM-DD` without a time of day. */
  | { readonly kind: 'day'; readonly date: string };

/** A form of name: what it looks like, whose clock it uses, whether it names the start. */
interface NameForm {
  /** Groups 1 to 6: year to second; 7: milliseconds. Unix forms: group 1, the seconds. */
  readonly form: RegExp;
  readonly clock: 'local' | 'utc' | 'unix' | 'day';
  readonly meaning: 'start' | 'unknown';
}

const DAY = String.raw`(\d{4})(\d{2})(\d{2})`;
const TIME = String.raw`(\d{2})(\d{2})(\d{2})`;

/** The first form that fits decides. What follows the date (`~2`, `(0)`, `.TS`, `_HDR`) is left alone. */
const NAME_FORMS: readonly NameForm[] = [
  // Pixel cameras, UTC: github.com/photostructure/exiftool-vendored.js/issues/113.
  { form: new RegExp(`^PXL_${DAY}_${TIME}(\\d{3})`), clock: 'utc', meaning: 'start' },
  // iOS screen recordings, Unix seconds: github.com/Piwigo/Piwigo-Mobile/issues/570. Start or stop is not known.
  { form: /^RPReplay_Final(\d{10})(?!\d)/, clock: 'unix', meaning: 'unknown' },
  // Messaging apps, date of sending and a counter: github.com/scubajeff/lespas/issues/162.
  { form: new RegExp(`^(?:VID|IMG)-${DAY}-WA\\d+`), clock: 'day', meaning: 'unknown' },
  // Android cameras, local: common practice for the prefixes; the bare form is proved by
  // github.com/photoprism/photoprism/issues/1388.
  {
    form: new RegExp(`^(?:(?:VID|IMG|MVIMG|MOV|PANO)_)?${DAY}_${TIME}(?!\\d)`),
    clock: 'local',
    meaning: 'start',
  },
  {
    form: new RegExp(`^(?:VID|IMG|MVIMG)_?${DAY}_?${TIME}(\\d{3})?(?!\\d)`),
    clock: 'local',
    meaning: 'start',
  },
  // Windows' camera: WIN_20260302_09_05_06_Pro.mp4 (common practice).
  { form: new RegExp(`^WIN_${DAY}_(\\d{2})_(\\d{2})_(\\d{2})(?!\\d)`), clock: 'local', meaning: 'start' },
  // Named by a person's or a program's hand: 2026-03-02 09.05.06.mp4. What happened then is not said.
  {
    form: /(?:^|\D)(\d{4})-(\d{2})-(\d{2})(?:[ _T-]| at )(\d{2})[.\-_h]?(\d{2})[.\-_m]?(\d{2})(?!\d)/,
    clock: 'local',
    meaning: 'unknown',
  },
];

/** What a file's name says of its date, or null where it is not of a form that devices use. */
export function findFileNameDate(fileName: string): FileNameDate | null {
  for (const { form, clock, meaning } of NAME_FORMS) {
    const found = form.exec(fileName);
    const date = found && readForm(found, clock, meaning);
    if (date) return date;
  }
  return null;
}

function readForm(
  found: RegExpExecArray,
  clock: NameForm['clock'],
  meaning: NameForm['meaning'],
): FileNameDate | null {
  if (clock === 'unix') return { kind: 'instant', ms: Number(found[1]) * 1000, meaning };
  const [, year, month, day, hour = '00', minute = '00', second = '00', thousandths = '0'] = found;
  const local = `${year}-${month}-${day}T${hour}:${minute}:${second}`;
  const asUtcMs = localAsUtcMs(local);
  if (asUtcMs === null) return null;
  if (clock === 'day') return { kind: 'day', date: local.slice(0, 10) };
  if (clock === 'local') return { kind: 'local', local, meaning };
  return { kind: 'instant', ms: asUtcMs + Number(thousandths), meaning };
}
