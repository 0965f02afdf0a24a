import { describe, expect, test } from 'vitest';
import { hideSquads } from '../../../renderer/client/lesson-names.ts';
import { describeTypedProblem } from '../../../renderer/text/english/command-line-problems.ts';
import { describeProblem } from '../../../renderer/text/english/problems.ts';
import type { Names } from '../../../renderer/text/names.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';

const names: Names = {
  squad: (code) => `Squad ${code}`,
  station: (code) => `Station ${code}`,
  planPlace: (path) => `Place ${path}`,
  clip: (id) => `${id}.MOV`,
  time: () => '10:46:03',
};

const path = 'teal/IMG_0412.MOV';
const storage = { path: '/lesson/marks.jsonl', cause: 'EIO' };
const cancelled = { code: 'decode-cancelled' } as const;

/** One example of every problem there is, by code; a code without one fails the build. */
const EXAMPLES: Readonly<Record<Problem['code'], object>> = {
  'queue-address-odd': {},
  'queue-engine-missing': {},
  'queue-unreachable': { host: '127.0.0.1:6379', detail: 'connect ECONNREFUSED' },
  'plan-not-json': { line: 3, column: 9 },
  'plan-not-ours': {},
  'plan-newer': { version: 7, newest: 1 },
  'plan-field': { path: 'stations[2].reps', expected: 'at-most', detail: '200' },
  'plan-zone-unknown': { path: 'zone', zone: 'Atlantic' },
  'plan-code-twice': { path: 'stations[1].code', value: 'A' },
  'plan-name-ambiguous': { path: 'squads[0]', other: 'plum', name: 'Plum' },
  'plan-station-unknown': { path: 'squads[0].route[1]', station: 'Z' },
  'plan-station-repeated': { path: 'squads[0].route[1]', station: 'A' },
  'plan-start-differs': { path: 'squads[0].startsAt', start: 'A', first: 'B' },
  'plan-squads-meet': { path: 'squads[1].route[0]', station: 'A', slot: 0, squads: ['teal', 'plum'] },
  'plan-period-unknown': { path: 'lesson.period', period: 'p9' },
  'plan-period-reversed': { path: 'periods[0]', start: '10:00', end: '09:00' },
  'plan-periods-overlap': { path: 'periods[1]', other: 'p1' },
  'plan-range-reversed': { path: 'stations[0].cycleSeconds' },
  'plan-scale-order': { path: 'scale[1].fromPercent' },
  'plan-text-too-long': { path: 'stations[0].clue', length: 150, limit: 140 },
  'plan-word-too-long': { path: 'stations[0].exercise', word: 'Seitwärtsstreckbewegungen' },
  'plan-clue-missing': { path: 'stations[1].clue', station: 'B' },
  'plan-too-many-squads': { path: 'squads', squads: 5, stations: 4 },
  'plan-pinnies-alike': { path: 'squads[1].pinnie.colour', squads: ['teal', 'moss'] },
  'plan-standard-unknown': { path: 'rubric.clip[0].standards[0]', standard: 's9' },
  'plan-squad-unknown': { path: 'rotation.fixedStarts[0].squad', squad: 'mauve' },
  'plan-rotation-station-unknown': { path: 'rotation.leftOut[0]', station: 'Z' },
  'plan-place-blank': { path: 'stations[0].place', station: 'A' },
  'plan-exercise-blank': { path: 'stations[0].exercise', station: 'A' },
  'plan-caution-blank': { path: 'stations[0].caution', station: 'A' },
  'plan-words-left-over': { path: 'stations[0].countsAs', station: 'A', exercise: 'Wall sits' },
  'plan-station-on-no-route': { path: 'rotation', station: 'A' },
  'plan-class-empty': { path: 'squads' },
  'plan-squad-empty': { path: 'squads[0]', squad: 'teal' },
  'plan-left-out-visited': { path: 'squads[0].route[1]', squad: 'teal', station: 'B' },
  'plan-start-not-kept': { path: 'squads[0].route[0]', squad: 'teal', station: 'B' },
  'plan-leg-forbidden': { path: 'squads[0].route[1]', squad: 'teal', leg: ['A', 'B'] },
  'plan-timing-too-long': { path: 'timing', minutes: 50, periodMinutes: 45 },
  'plan-reps-too-many': { path: 'stations[0].reps', station: 'A', neededSeconds: 400, slotSeconds: 340 },
  'plan-slot-too-short': { path: 'stations[0]', station: 'A', neededSeconds: 400, slotSeconds: 340 },
  'routes-without-squads': {},
  'routes-without-stations': {},
  'routes-too-many-squads': { squads: 5, stations: 4 },
  'routes-start-unknown': { squad: 'teal', station: 'Z' },
  'routes-start-twice': { station: 'A', squads: ['teal', 'plum'] },
  'routes-legs-needed': { design: 'cyclic', legs: [['A', 'B']] },
  'routes-not-found': { design: 'balanced', legs: [['A', 'B']] },
  'squads-without-pupils': {},
  'squads-too-many': { squads: 5, pupils: 3 },
  'squads-rules-contradict': { pupils: ['p1', 'p3'], together: ['p1', 'p2', 'p3'] },
  'squads-rules-too-many': { rules: [{ kind: 'apart', pupils: ['p1', 'p2'] }] },
  'squads-not-found': {},
  'squads-pupil-unknown': { pupil: 'p9' },
  'squads-uneven': { smallest: 4, largest: 6 },
  'standards-column-missing': { column: 'text' },
  'standards-line-incomplete': { line: 3 },
  'standards-code-bad': { line: 3, value: '--' },
  'standards-code-twice': { line: 3, value: 'PE.1' },
  'library-not-json': { line: 3, column: 9 },
  'library-not-ours': {},
  'library-newer': { version: 7, newest: 1 },
  'library-field': { path: 'exercises[0].name', expected: 'missing', detail: null },
  'library-code-twice': { path: 'exercises[3].code', value: 'wall-sit' },
  'lesson-folder-exists': { path: '/lessons/spring' },
  'version-unknown': { version: '2025' },
  'import-unreadable': { name: 'class.pdf' },
  'import-too-large': { name: 'class.csv', limitBytes: 2e7 },
  'import-not-utf8': { name: 'class.csv' },
  'import-column-missing': { column: 'id', heads: ['Name', 'Form'] },
  'import-line-incomplete': { line: 3 },
  'import-id-twice': { line: 3, id: 'k-0412' },
  'import-version-unknown': { version: '2.0' },
  'import-file-missing': { name: 'users.csv' },
  'import-file-column-missing': { name: 'users.csv', column: 'givenName' },
  'import-class-open': { classes: 3 },
  'import-class-unknown': { classId: 'c-9' },
  'import-empty': {},
  'import-user-missing': { id: 'u-9' },
  'print-text-too-long': { field: 'stations[2].exercise', text: 'Wall sits' },
  'print-letters-missing': { field: 'roster k-0412', letters: '張' },
  'print-clue-missing': { station: 'C' },
  'print-photo-missing': { station: 'C', path: 'photos/c.jpg' },
  'print-stills-missing': { clip: 'c1' },
  'print-empty': {},
  'roster-column-missing': { column: 'id' },
  'roster-not-utf8': { line: 15 },
  'roster-empty': {},
  'roster-line-uneven': { line: 4 },
  'roster-quote-open': { line: 4 },
  'roster-field-empty': { line: 4, column: 'given' },
  'roster-id-twice': { line: 4, id: 'k-0412', firstLine: 2 },
  'roster-squad-unknown': { line: 4, squad: 'mauve' },
  'roster-attendance-unknown': { line: 4, value: 'ill' },
  'roster-arrival-missing': { line: 4 },
  'roster-arrival-invalid': { line: 4, value: '25:00' },
  'roster-arrival-outside': { line: 4, value: '23:00', from: '10:45', to: '11:30' },
  'roster-stills-unknown': { line: 4, value: 'perhaps' },
  'roster-consent-unknown': { line: 4, value: 'perhaps' },
  'journal-not-ours': {},
  'journal-newer': { version: 7, newest: 1 },
  'journal-header-missing': {},
  'journal-line-torn': { line: 9, text: '{"id' },
  'journal-line-not-json': { line: 9, column: 4 },
  'journal-line-invalid': { line: 9, path: 'what.kind', expected: 'one-of' },
  'journal-kind-unknown': { line: 9, kind: 'sung' },
  'journal-id-repeated': { line: 9, firstLine: 8, differs: true },
  'copy-differs': storage,
  'disk-full': storage,
  'not-writable': storage,
  'not-readable': storage,
  'folder-missing': storage,
  'is-a-folder': storage,
  'name-too-long': storage,
  'write-failed': storage,
  'journal-overwritten': { path: '/lesson/marks.jsonl' },
  'lesson-without-plan': {},
  'lesson-without-roster': {},
  'decision-invalid': { path: 'what.arrived', expected: 'local-time', detail: null },
  'nothing-to-undo': {},
  'nothing-to-redo': {},
  'call-unknown': { name: 'fly' },
  'call-malformed': { name: 'decide', path: 'entries.0.act' },
  'call-cancelled': {},
  'program-fault': { trace: '1a2b3c4d' },
  'desk-unreachable': {},
  'folder-unknown': {},
  'no-folder-dialog': {},
  'lesson-unknown': {},
  'lesson-open-elsewhere': { lesson: '0123456789abcdef' },
  'clips-unread': {},
  'second-marking-only': {},
  'marker-name-bad': {},
  'pupil-unknown': { pupil: 'k-9' },
  'lesson-busy': {},
  'holdings-changed': {},
  'clip-unknown': { clip: '7c1e09aa' },
  'decision-meaningless': { path: 'pupil' },
  'plan-changed-elsewhere': {},
  'roster-changed': {},
  'sheet-changed': {},
  'file-name-bad': { path: 'a:b.csv' },
  'file-exists': { path: '/lesson/hand-in/sheet.csv' },
  'upload-differs': { path },
  'demo-failed': { reason: 'no room' },
  'archive-within-lesson': { path },
  'archive-left-out': { path, why: 'link' },
  'archive-exists': { path },
  'archive-not-ours': { path },
  'archive-newer': { path, version: 2, newest: 1 },
  'archive-cut-short': { path },
  'archive-damaged': { path, files: ['marks.jsonl'], whole: 3 },
  'archive-unsafe': { path, name: '/plan.json' },
  'restore-place-taken': { path },
  'lesson-away': { path },
  'no-lessons-found': { paths: [path] },
  'lesson-left-out': { path, because: { code: 'lesson-without-plan' } },
  'disk-too-small': { neededBytes: 4e9, freeBytes: 1e9 },
  'path-missing': { path },
  'clips-folder-missing': { path },
  'films-deleted': { at: '2025-08-01T09:00:00.000Z' },
  'folder-without-clips': { path },
  'folder-unreadable': { path },
  'folder-too-deep': { path },
  'link-not-followed': { path },
  'file-not-a-clip': { path },
  'file-vanished': { path },
  'file-unreadable': { path },
  'clip-of-nobody': { path, reason: 'no-squad-named' },
  'same-clip-twice': { squad: 'teal', paths: [path, 'teal/b.mov'] },
  'squad-without-clips': { squad: 'teal' },
  'clock-unchecked': { squad: 'teal', uncertaintySeconds: 120 },
  'clock-films-disagree': { squad: 'teal', clips: ['a', 'b'] },
  'stamp-odd': { path, problem: { code: 'stamp-date-without-time', date: '2025-05-15' } },
  'card-foreign': { path, text: 'RM1/S/MEADOW/B/1', kind: 'other-lesson' },
  'card-odd': {
    path,
    problem: {
      code: 'cards-disagree',
      taken: null,
      stations: [
        { code: 'A', frames: 2 },
        { code: 'B', frames: 2 },
      ],
    },
  },
  'cards-not-searched': { paths: [path], problem: cancelled },
  'media-empty': {},
  'media-unknown-kind': {},
  'media-cut-short': { missingBytes: null },
  'media-no-index': {},
  'media-malformed': { at: 40, part: 'moov' },
  'media-version-unsupported': { part: 'mvhd', version: 3 },
  'media-reading-limit': {},
  'media-no-picture': {},
  'ffmpeg-missing': { tried: [] },
  'decode-failed': { detail: '' },
  'decode-cut-short': { lastSeconds: 3.4, detail: '' },
  'decode-interrupted': { detail: 'ended by SIGKILL' },
  'decode-timed-out': { limitSeconds: 60 },
  'decode-cancelled': {},
  'card-reader-failed': { detail: 'no wasm' },
  'analysis-failed': { detail: 'out of memory' },
  'hand-in-flags-open': { openFlags: 2 },
  'hand-in-no-pupils': {},
  'sheet-id-formula': { row: 3, id: '=1+1' },
  'bundle-rule-broken': { rule: 'date', file: 'results.csv', record: 3, column: 'scoreDate', found: '1/2' },
  'bundle-school-missing': {},
  'bundle-unreadable': { name: 'notes.txt' },
  'bundle-too-large': { name: 'all.zip', limitBytes: 268_435_456 },
  'bundle-table-missing': { file: 'classes.csv' },
  'bundle-class-unknown': { classId: null },
  'bundle-class-open': { classIds: ['c-1', 'c-2'] },
  'bundle-category-unknown': { category: 'cat-9' },
  'bundle-row-missing': { file: 'orgs.csv', id: 'org-9' },
  'bundle-pupil-unknown': { pupil: 'k-0417' },
  'bundle-result-left-out': { pupil: 'k-0416', status: 'exempt' },
  'bundle-text-made-safe': { file: 'results.csv', id: 'r-1', column: 'comment' },
};

const describeExample = (code: string, facts: object) =>
  describeProblem({ code, ...facts } as Problem, names);

describe('the words for problems', () => {
  test('name no squad and no file of a squad while names are hidden', () => {
    const all = Object.entries(EXAMPLES).filter(([, facts]) => JSON.stringify(facts).includes('teal/'));
    const told = all.map(([code, facts]) => {
      const advice = describeProblem({ code, ...facts } as Problem, hideSquads(names, []));
      return `${code} ${advice.what} ${advice.todo}`;
    });
    const ofMarking = told.filter((words) => !/^(archive-|restore-|lesson-|no-lessons-)/.test(words));
    expect(ofMarking.filter((words) => /teal|Squad /.test(words))).toEqual([]);
    expect(ofMarking.filter((words) => words.includes('one file')).length).toBeGreaterThan(10);
  });

  test.each(Object.entries(EXAMPLES))(
    '%s says what happened, and what to do where something can be done',
    (code, facts) => {
      const { what, todo } = describeExample(code, facts);
      expect(what).toMatch(/^\S.*[.”)]$/s);
      expect(`${what} ${todo}`).not.toMatch(/undefined|NaN|Infinity|\[object| {2}|\.\.|\bnull [a-z]/);
      if (todo !== null) expect(todo).toMatch(/^[A-Z].*\.$/s);
      expect(what).not.toContain(code);
    },
  );

  test('name the facts that the teacher needs', () => {
    expect(describeExample('roster-squad-unknown', EXAMPLES['roster-squad-unknown']).what).toContain('mauve');
    expect(describeExample('squad-without-clips', { squad: 'teal' }).what).toContain('Squad teal');
    const unsearched = { paths: ['a', 'b', 'c', 'd'], problem: { code: 'ffmpeg-missing', tried: [] } };
    const { what, todo } = describeExample('cards-not-searched', unsearched);
    expect(what).toBe(
      'No ffmpeg was found, so no card could be read. Not searched for cards: 4 clips, a the first.',
    );
    expect(todo).toContain('Install ffmpeg');
  });

  test.each(Object.entries(EXAMPLES))(
    '%s speaks of no command, option or variable in a window',
    (code, facts) => {
      const { what, todo } = describeExample(code, facts);
      expect(`${what} ${todo}`).not.toMatch(/ --|ROUTEMARK_|\bnpm\b|\b[Rr]un again|command line/);
    },
  );

  test('at a command line say what to type there, and what happened as in the window', () => {
    const typed = (code: string, facts: object) => describeTypedProblem({ code, ...facts } as Problem, names);
    const small = { neededBytes: 3.1e9, freeBytes: 2.7e9 };
    expect(typed('disk-too-small', small).todo).toContain('--clips');
    expect(typed('disk-too-small', small).what).toBe(describeExample('disk-too-small', small).what);
    const unsearched = { paths: ['a'], problem: { code: 'ffmpeg-missing', tried: [] } };
    expect(typed('cards-not-searched', unsearched).todo).toContain('ROUTEMARK_FFMPEG');
    expect(typed('roster-empty', {})).toEqual(describeExample('roster-empty', {}));
  });

  test('keep to one and many', () => {
    expect(describeExample('hand-in-flags-open', { openFlags: 1 }).what).toContain('1 flag ');
    expect(describeExample('hand-in-flags-open', { openFlags: 2 }).what).toContain('2 flags ');
  });
});
