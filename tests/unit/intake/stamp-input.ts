import type { StampInput } from '../../../src-core/intake/stamp-case.ts';
import type { DateFact, MediaFacts } from '../../../src-core/media/media-facts.ts';

/** What a test says of a file; everything else is a plain MP4 of 12 s in New York, read in November 2026. */
export interface Said {
  readonly created?: string | null;
  readonly modified?: string | null;
  readonly dates?: readonly DateFact[];
  readonly facts?: Partial<MediaFacts> | null;
  readonly android?: boolean;
  readonly make?: string;
  readonly name?: string;
  readonly fileTime?: string | null;
  readonly zone?: string | null;
  readonly now?: string;
}

export function stampInput(said: Said): StampInput {
  const { created = null, modified = created } = said;
  const headers = created === null ? [] : [date('movie-header', created)];
  const facts: MediaFacts = {
    container: 'mp4',
    holds: 'video',
    durationSeconds: 12,
    dates: [...headers, ...(said.dates ?? [])],
    modifiedMs: modified === null ? null : Date.parse(modified),
    recorder: {
      brand: 'isom',
      make: said.make ?? '',
      model: '',
      software: '',
      android: said.android ?? false,
    },
    codec: 'avc1',
    ...said.facts,
  };
  return {
    facts: said.facts === null ? null : facts,
    fileName: said.name ?? 'clip.mp4',
    fileModifiedMs: said.fileTime == null ? null : Date.parse(said.fileTime),
    zone: said.zone === undefined ? 'America/New_York' : said.zone,
    nowMs: Date.parse(said.now ?? '2026-11-25T12:00:00Z'),
  };
}

/** A date fact from an ISO instant, a local time, or text that is neither. */
export function date(field: DateFact['field'], text: string): DateFact {
  const isLocal = /^\d{4}-\d{2}-\d{2}T[\d:]{8}$/.test(text);
  const ms = isLocal ? Number.NaN : Date.parse(text);
  const isInstant = text.includes('T') && !Number.isNaN(ms);
  return {
    field,
    raw: text,
    instantMs: isInstant ? ms : null,
    local: isLocal ? text : null,
    offsetMinutes: null,
  };
}

/** An instant as ISO text without milliseconds where they are zero; null stays null. */
export function iso(ms: number | null): string | null {
  return ms === null ? null : new Date(ms).toISOString().replace('.000Z', 'Z');
}
