import { PACK_NAMES, PAPER } from '../../../../renderer/text/english/paper.ts';
import type { Said } from '../../../printing/said.ts';
import type { LabelPage, SquadSheet } from '../../../printing/squad-sheet.ts';
import { type Layout, type Mark, ours, rule, text, type } from '../marks.ts';

/** Names that a sheet has room for before they get too small: a squad of the largest class, and some. */
const EMPTY_LINES = 6;
const NAMES_TOP = 96;
const NAMES_HEIGHT = 112;

/** A squad's own sheet: where it begins, who belongs to it, who films when, where it was. */
export function layOutSquadSheet(sheet: SquadSheet): Layout {
  return {
    title: PACK_NAMES.squads.title,
    marks: [...layOutHead(sheet), ...layOutNames(sheet.pupils, sheet.stops), ...layOutStops(sheet)],
  };
}

function layOutHead({ squad, heading, start, pupils }: SquadSheet): Mark[] {
  const hint = pupils.length === 0 ? PAPER.noPupils : PAPER.filmsHint;
  const worn = {
    text: PAPER.squadLine(squad.pinnie.text, squad.tablet.text),
    field: squad.pinnie.field,
  };
  return [
    { kind: 'bib', box: { x: 0, y: 1, w: 30, h: 36 }, squad },
    text({ x: 38, y: 0, w: 152, h: 20 }, squad.name, type('serif', 44, 14, 1.1), { stand: 'middle' }),
    text({ x: 38, y: 20, w: 152, h: 8 }, worn, type('sans-bold', 15, 6, 1.1), { stand: 'middle' }),
    text({ x: 38, y: 29, w: 152, h: 8 }, heading, type('sans', 13, 6), { stand: 'middle' }),
    rule(0, 42, 190, 1.1),
    text({ x: 0, y: 47, w: 46, h: 22 }, ours(PAPER.begin), type('serif', 26), { stand: 'middle' }),
    { kind: 'plate', box: { x: 48, y: 47, w: 24, h: 22 }, letter: start.code, cutMm: 5 },
    text({ x: 78, y: 47, w: 112, h: 22 }, start.place, type('serif', 30, 12, 1.1), { stand: 'middle' }),
    rule(0, 74, 190, 0.5),
    text({ x: 0, y: 77, w: 80, h: 8 }, ours(PAPER.pupils), type('serif', 16)),
    text({ x: 0, y: 85, w: 190, h: 6 }, ours(hint), type('sans', 11.5, 10)),
    text({ x: 82, y: 77, w: 108, h: 8 }, ours(PAPER.films), type('sans-bold', 12), {
      align: 'right',
      stand: 'bottom',
    }),
  ];
}

/** A line for each pupil with a box for each stop; lines to write on where the roster has nobody. */
function layOutNames(pupils: readonly Said[], stops: number): Mark[] {
  const names: readonly (Said | null)[] = pupils.length > 0 ? pupils : Array(EMPTY_LINES).fill(null);
  const h = Math.min(12, NAMES_HEIGHT / names.length);
  const step = Math.min(9, 102 / stops);
  const side = Math.min(step - 1.2, h - 2.4);
  return names.flatMap((name, at): Mark[] => {
    const y = NAMES_TOP + at * h;
    return [
      ...(name
        ? [
            text({ x: 0, y, w: 82, h: h - 0.4 }, name, type('sans', Math.min(16, h * 2.1), 5, 1.1), {
              stand: 'middle',
            }),
          ]
        : []),
      ...Array.from({ length: stops }, (_, stop): Mark[] => {
        const x = 190 - (stops - stop) * step;
        const box = { x, y: y + (h - side) / 2, w: side, h: side };
        return [
          { kind: 'frame', box, lineMm: 0.3, cutMm: 0 },
          ...(side >= 4
            ? [
                text(box, ours(String(stop + 1)), type('sans', Math.min(10, side * 1.6)), {
                  align: 'centre',
                  stand: 'middle',
                }),
              ]
            : []),
        ];
      }).flat(),
      rule(0, y + h - 0.1, 190, 0.15),
    ];
  });
}

/** Boxes for the letters of the stations; where the squad walks by its list, they stand there already. */
function layOutStops({ stops, letters }: SquadSheet): Mark[] {
  const across = Math.min(stops, 10);
  const rows = Math.ceil(stops / across);
  const step = Math.min(19, 190 / across);
  const h = Math.min(15, 26 / rows);
  return [
    rule(0, 211, 190, 0.5),
    text({ x: 0, y: 213, w: 70, h: 8 }, ours(letters ? PAPER.walkedBy : PAPER.stops), type('serif', 16)),
    text(
      { x: 72, y: 213, w: 118, h: 8 },
      ours(letters ? PAPER.routeHint : PAPER.stopsHint),
      type('sans', 11.5, 10),
      {
        align: 'right',
        stand: 'middle',
      },
    ),
    ...Array.from({ length: stops }, (_, stop): Mark[] => {
      const box = {
        x: (stop % across) * step,
        y: 223 + Math.floor(stop / across) * h,
        w: step - 3,
        h: h - 1.5,
      };
      return [
        { kind: 'frame', box, lineMm: 0.4, cutMm: 0 },
        ...(letters
          ? [
              text(
                { ...box, x: box.x + 5, w: box.w - 6 },
                ours(letters[stop] ?? ''),
                type('serif', Math.min(24, h * 2), 5, 1.05),
                { align: 'centre', stand: 'middle' },
              ),
            ]
          : []),
        text(
          { x: box.x + 0.8, y: box.y + 0.2, w: 6, h: 4.2 },
          ours(String(stop + 1)),
          type('sans', Math.min(9, h * 1.4)),
        ),
      ];
    }).flat(),
    text({ x: 0, y: 252, w: 190, h: 7 }, ours(PAPER.squadEnd), type('sans', 12, 10), { stand: 'bottom' }),
  ];
}

/** Labels to be cut out: tablet, bib and squad. */
export function layOutLabels({ squads }: LabelPage): Layout {
  const marks = squads.flatMap((squad, at): Mark[] => {
    const [x, y] = [(at % 2) * 96.5, Math.floor(at / 2) * 65];
    return [
      { kind: 'frame', box: { x: x + 0.5, y: y + 0.5, w: 92.5, h: 60 }, lineMm: 0.5, cutMm: 9 },
      { kind: 'bib', box: { x: x + 6, y: y + 7, w: 25, h: 30 }, squad },
      text({ x: x + 36, y: y + 6, w: 53, h: 17 }, squad.tablet, type('serif', 24, 7, 1.1), {
        stand: 'middle',
      }),
      text({ x: x + 36, y: y + 24, w: 53, h: 9 }, squad.name, type('sans-bold', 17, 6, 1.1), {
        stand: 'middle',
      }),
      text(
        { x: x + 36, y: y + 33, w: 53, h: 7 },
        { ...squad.pinnie, text: PAPER.pinnie(squad.pinnie.text) },
        type('sans', 12, 6, 1.1),
        { stand: 'middle' },
      ),
      rule(x + 6, y + 43, 81, 0.5),
      text({ x: x + 6, y: y + 45, w: 74, h: 12 }, ours(PAPER.labelEnd), type('sans', 12, 9), {
        stand: 'middle',
      }),
    ];
  });
  return { title: PACK_NAMES.labels.title, marks };
}
