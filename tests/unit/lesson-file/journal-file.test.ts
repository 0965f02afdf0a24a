import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  buildJournalLine,
  JOURNAL_HEADER,
  JOURNAL_VERSION,
  type JournalProblem,
  parseJournal,
} from '../../../src-core/lesson-file/journal-file.ts';
import type { JournalEvent } from '../../../src-core/marking/journal-event.ts';
import { journalActKindSchema } from '../../../src-core/marking/journal-event.ts';
import { replayJournal } from '../../../src-core/marking/replay.ts';
import { arbitraryMoves, playMoves } from '../marking/arbitrary-journal.ts';
import { buildTestEvent, confirm } from '../marking/harbour.ts';

const first = buildTestEvent(1, confirm('clip-1'));
const second = buildTestEvent(2, { kind: 'station-set', clip: 'clip-2', station: 'B' });

function buildText(...lines: readonly string[]): string {
  return [JOURNAL_HEADER, ...lines].map((line) => `${line}\n`).join('');
}

function read(text: string): { events: readonly JournalEvent[]; problems: readonly JournalProblem[] } {
  const outcome = parseJournal(text);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return { events: outcome.value, problems: outcome.problems };
}

describe('a journal', () => {
  test('begins with a header that says what it is', () => {
    expect(JOURNAL_HEADER).toBe('{"format":"routemark-marks","version":1}');
  });

  test('reads back as it was written, one event a line', () => {
    fc.assert(
      fc.property(arbitraryMoves, (moves) => {
        const events = playMoves(moves);
        const lines = events.map(buildJournalLine);
        expect(lines.every((line) => !line.includes('\n'))).toBe(true);
        expect(read(buildText(...lines))).toEqual({ events, problems: [] });
      }),
    );
  });

  test('may be empty, or hold nothing but its header', () => {
    expect(read('')).toEqual({ events: [], problems: [] });
    expect(read(buildText())).toEqual({ events: [], problems: [] });
  });

  test('may have been through an editor: byte order mark, CRLF, empty lines, no last line end', () => {
    const text = `\uFEFF${JOURNAL_HEADER}\r\n\r\n${buildJournalLine(first)}\r\n${buildJournalLine(second)}`;
    expect(read(text)).toEqual({ events: [first, second], problems: [] });
  });

  test('may be two journals joined end to end', () => {
    const text = buildText(buildJournalLine(first)) + buildText(buildJournalLine(second));
    expect(read(text)).toEqual({ events: [first, second], problems: [] });
  });
});

describe('a damaged journal', () => {
  test('cut off anywhere in its last line loses that line alone, and says so', () => {
    const whole = buildText(buildJournalLine(first));
    const last = buildJournalLine(second);
    for (let length = 1; length < last.length; length += 1) {
      const torn = last.slice(0, length);
      expect(read(whole + torn)).toEqual({
        events: [first],
        problems: [{ code: 'journal-line-torn', line: 3, text: torn }],
      });
    }
  });

  test('still tells a torn line when others were written after it, wherever it was cut', () => {
    const line = buildJournalLine(first);
    for (let length = 1; length < line.length; length += 1) {
      const torn = line.slice(0, length);
      expect(read(buildText(torn, buildJournalLine(second)))).toEqual({
        events: [second],
        problems: [{ code: 'journal-line-torn', line: 2, text: torn }],
      });
    }
  });

  test('cut off in its header is a journal without events', () => {
    for (let length = 1; length < JOURNAL_HEADER.length; length += 1) {
      expect(read(JOURNAL_HEADER.slice(0, length)).events).toEqual([]);
    }
  });

  test('whose last line is zeros, as a power cut leaves it, keeps all before', () => {
    const zeros = '\0'.repeat(100);
    expect(read(buildText(buildJournalLine(first)) + zeros)).toMatchObject({
      events: [first],
      problems: [{ code: 'journal-line-torn', line: 3 }],
    });
  });

  test('with a line in its middle that is no JSON skips it and says where', () => {
    expect(read(buildText(buildJournalLine(first), 'x{}', buildJournalLine(second)))).toEqual({
      events: [first, second],
      problems: [{ code: 'journal-line-not-json', line: 3, column: 1 }],
    });
  });

  test('with a line that is no event skips it and says what was expected', () => {
    const line = JSON.stringify({ ...first, at: 'today' });
    expect(read(buildText(line, buildJournalLine(second)))).toEqual({
      events: [second],
      problems: [{ code: 'journal-line-invalid', line: 2, path: 'at', expected: 'utc-instant' }],
    });
  });

  test('names kinds that only a newer program knows', () => {
    const line = JSON.stringify({ ...first, what: { kind: 'clip-praised', clip: 'clip-1' } });
    expect(read(buildText(line))).toEqual({
      events: [],
      problems: [{ code: 'journal-kind-unknown', line: 2, kind: 'clip-praised' }],
    });
  });

  test('takes each id once, and says whether the other line said the same', () => {
    const other = { ...first, who: 'someone else' };
    expect(read(buildText(...[first, first, other].map(buildJournalLine)))).toEqual({
      events: [first],
      problems: [
        { code: 'journal-id-repeated', line: 3, firstLine: 2, differs: false },
        { code: 'journal-id-repeated', line: 4, firstLine: 2, differs: true },
      ],
    });
  });

  test('without its header is read all the same', () => {
    expect(read(`${buildJournalLine(first)}\n`)).toEqual({
      events: [first],
      problems: [{ code: 'journal-header-missing' }],
    });
  });

  test('never makes reading fail on bytes of any kind once the header is there', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary-ascii', maxLength: 200 }), (noise) => {
        fc.pre(!noise.includes('format'));
        expect(read(`${buildText(buildJournalLine(first))}${noise}`).events).toContainEqual(first);
      }),
    );
  });
});

describe('a file that is no journal of ours', () => {
  test.each([
    '{"format":"routemark-plan","version":1}\n',
    '{"format":"routemark-marks"}\n',
    'a,b\n1,2\n',
    '\u0000\u0001\n',
  ])('is refused: %j', (text) => {
    expect(parseJournal(text)).toEqual({ ok: false, problems: [{ code: 'journal-not-ours' }] });
  });

  test('is refused when a newer program wrote it', () => {
    const text = `{"format":"routemark-marks","version":2}\n${buildJournalLine(first)}\n`;
    expect(parseJournal(text)).toEqual({
      ok: false,
      problems: [{ code: 'journal-newer', version: 2, newest: 1 }],
    });
  });
});

describe('the frozen journal of version', () => {
  test.each(Array.from({ length: JOURNAL_VERSION }, (_, index) => index + 1))(
    '%d is read whole',
    (version) => {
      const text = readFileSync(new URL(`./marks-v${version}.jsonl`, import.meta.url), 'utf8');
      const { events, problems } = read(text);
      expect(problems).toEqual([]);
      expect(new Set(events.map(({ what }) => what.kind))).toEqual(new Set(journalActKindSchema.options));
      const { decisions, undoTarget, idle } = replayJournal(events);
      expect(idle).toEqual([]);
      expect(undoTarget).toBe(events.at(-1)?.id);
      expect(decisions.clockCorrectionSeconds.get('slate')).toBe(2220);
      expect(decisions.answers.get('7c1e09aa')?.get('together')).toBe(true);
      expect(decisions.overrides.get('pupil:k-0417')?.change).toEqual({ type: 'by', points: 1 });
      expect(decisions.handedIn).toHaveLength(1);
    },
  );
});
