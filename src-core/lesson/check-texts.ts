import { estimateEms, splitAtHyphens } from '../platform/line-pieces.ts';
import { CARD_LIMITS, HEAD_LIMITS, SQUAD_LIMITS, WORD_EMS } from './card-limits.ts';
import type { ReadinessProblem } from './lesson-problem.ts';
import type { Plan } from './plan.ts';

/** Whether every text that is printed fits its place on paper: not too long, and no word wider than its column. */
export function checkTexts(plan: Plan): readonly ReadinessProblem[] {
  const { lesson, stations, squads } = plan;
  return [
    ...keysOf(HEAD_LIMITS).flatMap((field) =>
      checkText(lesson[field], `lesson.${field}`, { ems: WORD_EMS[field], limit: HEAD_LIMITS[field] }),
    ),
    ...stations.flatMap((station, at) =>
      keysOf(CARD_LIMITS).flatMap((field) => {
        const room = { ems: WORD_EMS[field], limit: CARD_LIMITS[field] };
        return checkText(station[field] ?? '', `stations[${at}].${field}`, room);
      }),
    ),
    ...squads.flatMap(({ name, pinnie, tablet }, at) => {
      const said = { name, 'pinnie.name': pinnie.name, tablet };
      return Object.entries(said).flatMap(([path, text]) => {
        const field = path === 'pinnie.name' ? 'pinnie' : (path as 'name' | 'tablet');
        const room = { ems: WORD_EMS[field], limit: SQUAD_LIMITS[field] };
        return checkText(text, `squads[${at}].${path}`, room);
      });
    }),
    ...checkBriefing(plan.briefing),
  ];
}

/** The briefing takes as many lines and pages as it needs; a word must fit its column. */
function checkBriefing(briefing: Plan['briefing']): ReadinessProblem[] {
  const room = { ems: WORD_EMS.briefing, limit: Number.POSITIVE_INFINITY };
  const lists = (['rules', 'boundaries', 'cautions'] as const).flatMap((list) =>
    briefing[list].flatMap((text, at) => checkText(text, `briefing.${list}[${at}]`, room)),
  );
  const words = briefing.words.flatMap((entry, at) =>
    (['word', 'meaning'] as const).flatMap((part) =>
      checkText(entry[part], `briefing.words[${at}].${part}`, room),
    ),
  );
  return [...checkText(briefing.objective ?? '', 'briefing.objective', room), ...words, ...lists];
}

/** What a text has room for: the widest word in ems, and so many characters in all. */
interface Room {
  readonly ems: number;
  readonly limit: number;
}

function checkText(text: string, path: string, { ems, limit }: Room): ReadinessProblem[] {
  const { length } = [...text];
  if (length > limit) return [{ code: 'plan-text-too-long', path, length, limit }];
  const pieces = text.split(/\s+/).flatMap(splitAtHyphens);
  const word = pieces.find((piece) => estimateEms(piece) > ems);
  return word === undefined ? [] : [{ code: 'plan-word-too-long', path, word }];
}

function keysOf<Key extends string>(table: Readonly<Record<Key, unknown>>): readonly Key[] {
  return Object.keys(table) as Key[];
}
