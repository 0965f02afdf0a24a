import {
  type JournalEvent,
  type JournalEventId,
  journalActKindSchema,
  journalEventSchema,
} from '../marking/journal-event.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import { findJsonError } from './json-error.ts';
import { readSchemaProblems } from './schema-problem.ts';

/** The version of marks.jsonl that is written, and the newest that is read. */
export const JOURNAL_VERSION = 1;

/** The first line of marks.jsonl, without its line end. */
export const JOURNAL_HEADER = JSON.stringify({ format: 'routemark-marks', version: JOURNAL_VERSION });

/** What was odd about a journal. Lines count from 1, the header among them. Nothing of it is ever removed. */
export type JournalProblem =
  | { readonly code: 'journal-not-ours' }
  | { readonly code: 'journal-newer'; readonly version: number; readonly newest: number }
  | { readonly code: 'journal-header-missing' }
  /** A line that was cut off in writing: its decision was never acknowledged. */
  | { readonly code: 'journal-line-torn'; readonly line: number; readonly text: string }
  | { readonly code: 'journal-line-not-json'; readonly line: number; readonly column: number }
  /** JSON, but no event; `path` and `expected` as in the plan's problems. */
  | {
      readonly code: 'journal-line-invalid';
      readonly line: number;
      readonly path: string;
      readonly expected: string;
    }
  /** An event of a kind that a newer program knows. */
  | { readonly code: 'journal-kind-unknown'; readonly line: number; readonly kind: string }
  /** The same id again: dropped. `differs`: what it said was not the same. */
  | {
      readonly code: 'journal-id-repeated';
      readonly line: number;
      readonly firstLine: number;
      readonly differs: boolean;
    };

type JournalOutcome = Outcome<readonly JournalEvent[], JournalProblem>;

/**
 * Reads marks.jsonl: a header, then one event a line, in the file's order. Whatever can be read is; every other
 * line is reported and left where it is. Fails only where the text is no journal or a newer program's. Empty text
 * is an empty journal. A header that comes again, as when two journals were joined end to end, means nothing.
 */
export function parseJournal(text: string): JournalOutcome {
  const lines = text.replace(/^\uFEFF/, '').split('\n');
  const reading: Reading = { events: [], problems: [], seen: new Map(), headers: [] };
  lines.forEach((line, index) => {
    const isLast = index === lines.length - 1;
    readLine(reading, { text: line.replace(/\r$/, ''), number: index + 1, isLast });
  });
  const refusal = reading.headers.map(findRefusal).find((problem) => problem !== null);
  if (refusal) return fail(refusal);
  if (reading.headers.length > 0 || text === '') return succeed(reading.events, reading.problems);
  if (reading.events.length === 0 && !isTornHeader(lines)) return fail({ code: 'journal-not-ours' });
  return succeed(reading.events, [{ code: 'journal-header-missing' }, ...reading.problems]);
}

function findRefusal(header: Header): JournalProblem | null {
  const version = Number(header.version);
  if (header.format !== 'routemark-marks' || Number.isNaN(version)) return { code: 'journal-not-ours' };
  return version <= JOURNAL_VERSION ? null : { code: 'journal-newer', version, newest: JOURNAL_VERSION };
}

/** An event as a line of marks.jsonl, without its line end. */
export function buildJournalLine(event: JournalEvent): string {
  return JSON.stringify(journalEventSchema.parse(event));
}

type Header = Readonly<Record<string, unknown>>;

interface Reading {
  readonly events: JournalEvent[];
  readonly problems: JournalProblem[];
  readonly headers: Header[];
  readonly seen: Map<JournalEventId, { readonly line: number; readonly text: string }>;
}

interface Line {
  readonly text: string;
  readonly number: number;
  /** Nothing follows it, not even a line end: it may have been cut off. */
  readonly isLast: boolean;
}

function readLine(reading: Reading, line: Line): void {
  if (line.text.trim() === '') return;
  const content = readJson(line.text);
  if (content === undefined) reading.problems.push(describeBrokenLine(line));
  else if (isHeader(content)) reading.headers.push(content);
  else readEvent(reading, line, content);
}

/** A text that is JSON as far as it goes was cut off in writing, wherever it stands; other texts are damaged. */
function describeBrokenLine({ text, number: line, isLast }: Line): JournalProblem {
  const place = findJsonError(text);
  if (isLast || place?.offset === text.length) return { code: 'journal-line-torn', line, text };
  return { code: 'journal-line-not-json', line, column: place?.column ?? 1 };
}

function readEvent(reading: Reading, line: Line, content: unknown): void {
  const parsed = journalEventSchema.safeParse(content);
  if (!parsed.success) {
    reading.problems.push(
      describeInvalid(line.number, content, readSchemaProblems(parsed.error, content)[0]),
    );
    return;
  }
  const { data: event } = parsed;
  const text = JSON.stringify(event);
  const first = reading.seen.get(event.id);
  if (first) {
    const differs = first.text !== text;
    reading.problems.push({
      code: 'journal-id-repeated',
      line: line.number,
      firstLine: first.line,
      differs,
    });
    return;
  }
  reading.seen.set(event.id, { line: line.number, text });
  reading.events.push(event);
}

function describeInvalid(
  line: number,
  content: unknown,
  problem: { readonly path: string; readonly expected: string } | undefined,
): JournalProblem {
  const kind = findKind(content);
  if (kind !== null && !journalActKindSchema.safeParse(kind).success) {
    return { code: 'journal-kind-unknown', line, kind };
  }
  return {
    code: 'journal-line-invalid',
    line,
    path: problem?.path ?? '',
    expected: problem?.expected ?? 'other',
  };
}

function findKind(content: unknown): string | null {
  if (!isGroup(content) || !isGroup(content.what)) return null;
  return typeof content.what.kind === 'string' ? content.what.kind : null;
}

function isHeader(content: unknown): content is Header {
  return isGroup(content) && typeof content.format === 'string';
}

/** The very first write was cut off: there is nothing but the beginning of a header. */
function isTornHeader(lines: readonly string[]): boolean {
  return lines.length === 1 && JOURNAL_HEADER.startsWith(lines[0] ?? '');
}

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Undefined, which no JSON text stands for, where the text is not JSON. */
function readJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
