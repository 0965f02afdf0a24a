import type { Consent } from '../roster.ts';
import { buildRosterText, parseRosterTable, type RosterTable, withColumn } from './roster-table.ts';

/** What is noted of a pupil and pictures. It has no reasons on purpose: those are the family's own. */
export interface PupilWords {
  /** Null: nothing is noted any more; left out: as it is. */
  readonly consent?: Consent | null | undefined;
  /** False: on the do-not-film list; left out: as it is. */
  readonly stills?: boolean | undefined;
}

const CONSENT_FIELDS: Readonly<Record<Consent, string>> = { given: 'yes', withheld: 'no' };

/** roster.csv with these words for one pupil, all else as it is; null where it has no such pupil. */
export function withPupilWords(roster: string, pupil: string, words: PupilWords): string | null {
  const table = parseRosterTable(roster);
  if (!table.rows.some((row) => row.id?.trim() === pupil)) return null;
  const fields = {
    ...(words.consent !== undefined && { consent: words.consent ? CONSENT_FIELDS[words.consent] : '' }),
    ...(words.stills !== undefined && { stills: words.stills ? 'yes' : 'no' }),
  };
  const { heads } = Object.keys(fields).reduce<RosterTable>(withColumn, table);
  const rows = table.rows.map((row) => (row.id?.trim() === pupil ? { ...row, ...fields } : row));
  return buildRosterText({ heads, rows });
}
