import type { EpochMs } from '../platform/units.ts';
import { MS_PER_SECOND } from '../platform/units.ts';
import type { StationCode } from './plan.ts';

/** What one of our printed or shown codes says. */
export type CardText =
  | {
      readonly kind: 'station';
      readonly lesson: string;
      readonly station: StationCode;
      readonly revision: number;
    }
  | { readonly kind: 'clock'; readonly instantMs: EpochMs };

/**
 * The text of a station card's code, such as `RM1/S/HARBOUR/A/2`: capitals, digits and `/` alone, so that it
 * stays in QR's alphanumeric mode and the symbol stays small (ISO/IEC 18004, 7.4.4). The address of a
 * demonstration stands before it, with ours as its fragment.
 */
export function formatStationCard(card: {
  readonly lesson: string;
  readonly station: StationCode;
  readonly revision: number;
  readonly demonstration?: string | undefined;
}): string {
  const own = `RM1/S/${card.lesson}/${card.station}/${card.revision}`;
  return card.demonstration ? `${card.demonstration}#${own}` : own;
}

/** The text of the class clock's code for an instant, to the whole second: `RM1/T/1747316820` (Unix seconds). */
export function formatClockCard(instantMs: EpochMs): string {
  return `RM1/T/${Math.floor(instantMs / MS_PER_SECOND)}`;
}

/**
 * Reads a code's text. A web address may stand before it, with ours as the fragment (`https://…#RM1/S/…`), so
 * that a pupil's camera opens the demonstration and Routemark still reads the station. Null: not one of ours.
 */
export function parseCardText(text: string): CardText | null {
  const own = text.slice(text.indexOf('#') + 1);
  const station = /^RM1\/S\/([A-Z0-9-]{1,12})\/([A-Z0-9]{1,3})\/(\d{1,3})$/.exec(own);
  if (station) {
    const [, lesson = '', code = '', revision = ''] = station;
    return { kind: 'station', lesson, station: code, revision: Number(revision) };
  }
  const clock = /^RM1\/T\/(\d{9,11})$/.exec(own);
  return clock ? { kind: 'clock', instantMs: Number(clock[1]) * MS_PER_SECOND } : null;
}
