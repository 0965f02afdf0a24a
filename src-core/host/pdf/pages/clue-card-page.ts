import { PACK_NAMES, PAPER } from '../../../../renderer/text/english/paper.ts';
import type { ClueCard, CluePage } from '../../../printing/clue-cards.ts';
import type { PaperSquad } from '../../../printing/paper-pinnie.ts';
import { type Layout, type Mark, ours, rule, text, type } from '../marks.ts';

const SLIP_HEIGHT = 82;
const SLIP_STEP = 88;

/** Slips of one width, to be cut out along their frames. */
export function layOutCluePage({ cards }: CluePage): Layout {
  return {
    title: PACK_NAMES.clues.title,
    marks: cards.flatMap((card, at) => layOutSlip(card, at * SLIP_STEP)),
  };
}

function layOutSlip({ at, place, clue, transit, squads }: ClueCard, y: number): Mark[] {
  return [
    { kind: 'frame', box: { x: 0.5, y: y + 0.5, w: 189, h: SLIP_HEIGHT - 1 }, lineMm: 0.5, cutMm: 12 },
    { kind: 'plate', box: { x: 7, y: y + 6, w: 15, h: 14 }, letter: at, cutMm: 3 },
    text(
      { x: 26, y: y + 6, w: squads ? 92 : 116, h: 14 },
      { ...place, text: PAPER.clueAt(place.text) },
      type('sans-bold', 13, 7),
      { stand: 'middle' },
    ),
    ...layOutOwners(squads, y),
    rule(7, y + 23, 176, 0.7),
    text({ x: 7, y: y + 25, w: 176, h: 34 }, clue, type('serif-italic', 32, 15, 1.12), { stand: 'middle' }),
    ...(transit
      ? [
          text(
            { x: 7, y: y + 60, w: 165, h: 11 },
            { ...transit, text: `${PAPER.onTheWay} ${transit.text}` },
            type('sans-bold', 14, 8.5, 1.15),
            { stand: 'middle' },
          ),
        ]
      : []),
    text({ x: 7, y: y + 72, w: 160, h: 7 }, ours(`${PAPER.walk} ${PAPER.clueEnd}`), type('sans', 11, 9), {
      stand: 'middle',
    }),
  ];
}

/** Whom a slip is for: bib and name for one or two squads, names alone for more. */
function layOutOwners(squads: readonly PaperSquad[] | null, y: number): Mark[] {
  const standing = { stand: 'middle' as const };
  if (squads === null) {
    return [
      text({ x: 144, y: y + 6, w: 39, h: 14 }, ours(PAPER.everySquad), type('sans-bold', 14), {
        ...standing,
        align: 'right',
      }),
    ];
  }
  if (squads.length > 2) {
    const names = squads.map(({ name }) => name.text).join(', ');
    const said = { text: `${PAPER.forSquads} ${names}`, field: squads[0]?.name.field ?? '' };
    return [
      text({ x: 120, y: y + 6, w: 63, h: 14 }, said, type('sans-bold', 13, 6, 1.15), {
        ...standing,
        align: 'right',
      }),
    ];
  }
  const w = 63 / squads.length;
  return squads.flatMap((squad, at): Mark[] => [
    { kind: 'bib', box: { x: 120 + at * w, y: y + 7, w: 9.5, h: 11.4 }, squad },
    text(
      { x: 131 + at * w, y: y + 6, w: w - 12, h: 14 },
      squad.name,
      type('sans-bold', 14, 6, 1.1),
      standing,
    ),
  ]);
}
