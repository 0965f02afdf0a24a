import type { DateFact, MediaFacts } from '../../../src-core/media/media-facts.ts';
import { readMedia } from '../../../src-core/media/read-media.ts';
import { sourceOf } from './build-boxes.ts';

/** The facts of a file that must be readable. */
export async function getFacts(bytes: Uint8Array): Promise<MediaFacts> {
  const outcome = await readMedia(sourceOf(bytes));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

/** The problems of a file, whether or not anything could be read. */
export async function getProblems(bytes: Uint8Array) {
  return (await readMedia(sourceOf(bytes))).problems;
}

/** The first date of a kind, as an ISO instant or a local time; null where there is none. */
export function showDate(facts: MediaFacts, field: DateFact['field']): string | null {
  const date = facts.dates.find((one) => one.field === field);
  if (!date) return null;
  return date.instantMs === null ? date.local : new Date(date.instantMs).toISOString().replace('.000Z', 'Z');
}
