import { describe, expect, test } from 'vitest';
import { draftPack, parsePackParts } from '../../../src-core/app/print-pack.ts';
import type { Pupil } from '../../../src-core/lesson/roster.ts';
import { buildCluePages } from '../../../src-core/printing/clue-cards.ts';
import { buildPack, PACK_PARTS, type PackPart } from '../../../src-core/printing/pack.ts';
import { buildSmallPlan, type getRawPlan } from '../lesson/small-plan.ts';

const PUPILS: readonly Pupil[] = ['Odda', 'Bram', 'Ilva'].map((given, at) => ({
  id: `k-${at}`,
  given,
  family: 'Mudlark',
  squad: at === 0 ? 'teal' : 'plum',
  attendance: at === 1 ? 'excused' : 'present',
  arrived: null,
  stills: at !== 2,
}));

type Raw = ReturnType<typeof getRawPlan>;

function addClues(raw: Raw): void {
  for (const station of raw.stations)
    Object.assign(station, { clue: `Clue to ${station.code}`, transit: 'Two laps' });
}

function draw(part: PackPart, change: (raw: Raw) => void = addClues, isGrey = false) {
  const { sections } = buildPack(buildSmallPlan(change), PUPILS, { parts: [part], isGrey });
  return JSON.parse(JSON.stringify(sections[0]?.pages ?? []));
}

describe('clue cards', () => {
  test('lie at one station and hold the clue to the next, without naming it', () => {
    const [page] = draw('clues');
    expect(page.cards).toMatchObject([
      {
        at: 'A',
        clue: { text: 'Clue to B', field: 'stations[1].clue' },
        transit: { text: 'Two laps' },
        squads: null,
      },
      { at: 'B', clue: { text: 'Clue to A', field: 'stations[0].clue' }, squads: null },
    ]);
    expect(JSON.stringify(page.cards[0])).not.toContain('Net loft');
  });

  test('are one for all squads where all walk on to the same station, else one a next station', () => {
    const pages = draw('clues', (raw) => {
      raw.stations.push({ code: 'C', place: 'Slip', exercise: 'Wall sits', reps: 5, counting: 'cycle' });
      addClues(raw);
      const routes = [
        ['A', 'B', 'C'],
        ['B', 'A', 'C'],
      ];
      for (const [at, squad] of raw.squads.entries()) Object.assign(squad, { route: routes[at] });
    });
    const said = pages
      .flatMap(({ cards }: { cards: object[] }) => cards)
      .map(
        ({
          at,
          clue,
          squads,
        }: {
          at: string;
          clue: { text: string };
          squads: null | { name: { text: string } }[];
        }) => [at, clue.text, squads?.map(({ name }) => name.text) ?? 'all'],
      );
    expect(said).toEqual([
      ['A', 'Clue to B', ['Teal']],
      ['A', 'Clue to C', ['Plum']],
      ['B', 'Clue to C', ['Teal']],
      ['B', 'Clue to A', ['Plum']],
    ]);
  });

  test('of a station without a clue are none, and that is said', () => {
    const plan = buildSmallPlan((raw) => Object.assign(raw.stations[1] ?? {}, { clue: 'Where nets dry' }));
    const { pages, problems } = buildCluePages(plan, false);
    expect(pages.flatMap(({ cards }) => cards.map(({ at }) => at))).toEqual(['A']);
    expect(problems).toEqual([{ code: 'print-clue-missing', station: 'A' }]);
  });
});

describe('a lesson without any clue', () => {
  const withoutClues = (raw: Raw) => Object.assign(raw.stations[1] ?? {}, { transit: 'Two laps' });

  test('is walked by the list that each squad carries', () => {
    const pages = draw('squads', withoutClues);
    expect(pages.map(({ kind }: { kind: string }) => kind)).toEqual([
      'squad-sheet',
      'route-list',
      'squad-sheet',
      'route-list',
    ]);
    expect(pages[0].letters).toEqual(['A', 'B']);
    expect(pages[1].stops).toMatchObject([
      { number: 1, code: 'A', place: { text: 'Pier head' }, transit: null },
      { number: 2, code: 'B', place: { text: 'Net loft' }, transit: { text: 'Two laps' } },
    ]);
    expect(pages[3].stops.map(({ code }: { code: string }) => code)).toEqual(['B', 'A']);
  });

  test('has cards that send nobody to a clue, lacks no clue, and tells no route where there are clues', () => {
    expect(draw('cards', withoutClues)[0].leadsOn).toBe('route');
    expect(buildCluePages(buildSmallPlan(), false)).toEqual({ pages: [], problems: [] });
    expect(draw('cards')[0].leadsOn).toBe('clue');
    expect(draw('squads')).toMatchObject([{ letters: null }, { kind: 'squad-sheet', letters: null }]);
  });
});

describe('pupils who are not to be filmed', () => {
  test('stand on the teacher’s route key', () => {
    const [key] = draw('key');
    expect(key.notShown).toEqual([
      {
        squad: { text: 'Plum', field: 'squads[1].name' },
        pupils: [{ text: 'Ilva Mudlark', field: 'roster k-2' }],
      },
    ]);
  });

  test('stand on squad sheets like everybody else, as excused ones do', () => {
    const [, plum] = draw('squads');
    expect(plum.pupils).toEqual([
      { text: 'Bram Mudlark', field: 'roster k-1' },
      { text: 'Ilva Mudlark', field: 'roster k-2' },
    ]);
    expect(JSON.stringify(plum)).not.toMatch(/stills|excused|film/i);
  });
});

test('the route key says where every squad is in every slot, and what stands empty', () => {
  const [key] = draw('key', (raw) => {
    raw.stations.push({ code: 'C', place: 'Slip', exercise: 'Wall sits', reps: 5, counting: 'cycle' });
  });
  const slots = key.slots.map(({ at, free }: { at: { code: string }[]; free: string[] }) => [
    at.map(({ code }) => code),
    free,
  ]);
  expect(slots).toEqual([
    [['A', 'B'], ['C']],
    [['B', 'A'], ['C']],
  ]);
});

test('in grey a pinnie is a grey of the same lightness, and keeps its pattern', () => {
  const [colour, grey] = [draw('labels')[0].squads[0], draw('labels', addClues, true)[0].squads[0]];
  // Rec. ITU-R BT.601, 2.5.1, of #1F8A86: 0.299 × 31 + 0.587 × 138 + 0.114 × 134.
  expect(grey.colour).toBe('#6a6a6a');
  expect(colour.colour).toBe('#1F8A86');
  expect(grey.pattern).toEqual(colour.pattern);
});

test('the pack holds the parts asked for, in its own order', () => {
  const plan = buildSmallPlan(addClues);
  const draft = draftPack(
    { plan, pupils: PUPILS },
    { parts: ['labels', 'cards'], paper: 'a4', isGrey: false },
  );
  expect(draft.sections.map(({ part, pages }) => [part, pages.length])).toEqual([
    ['cards', 2],
    ['labels', 1],
  ]);
});

test.each([
  ['cards,clues', ['cards', 'clues']],
  [' Clues , KEY', ['key', 'clues']],
  [PACK_PARTS.join(','), [...PACK_PARTS]],
  ['cards,posters', null],
  ['', null],
])('parts typed as “%s” are read', (typed, parts) => {
  expect(parsePackParts(typed)).toEqual(parts);
});
