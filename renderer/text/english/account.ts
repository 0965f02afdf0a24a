import type { AccountWords } from '../../../src-core/gradebook/account-sheet.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { SumPart } from '../../../src-core/marking/sum.ts';
import { change, SCORES } from './scores.ts';

const { parts: PARTS, noMark: NO_MARK } = SCORES;

function findLabel({ rubric }: Plan, code: string): string {
  return [...rubric.clip, ...rubric.squad].find((one) => one.code === code)?.label ?? code;
}

/** Why a clip gave less than it could: criteria not met, and those that nobody has answered. */
export function nameShortfall(
  { station, unmet, open }: Extract<SumPart, { code: 'slot' }>,
  label: (code: string) => string,
): string {
  const met = unmet.filter((code) => !open.includes(code)).map(label);
  return open.length === 0 ? PARTS.criteria(station, met) : PARTS.open(station, open.map(label), met);
}

function explainSlot(plan: Plan, part: Extract<SumPart, { code: 'slot' }>): string {
  if (part.reason === 'no-clip') return PARTS.noClip(part.station);
  if (part.reason === 'order') return PARTS.order(part.station);
  if (part.unmet.length === 0) return PARTS.earned([part.station]);
  const label = (code: string) => findLabel(plan, code).toLowerCase();
  return nameShortfall(part, label);
}

/** The second sheet of the workbook: where each point came from. */
export const ACCOUNT: AccountWords & {
  readonly sheets: { readonly marks: string; readonly account: string };
} = {
  sheets: { marks: 'Marks', account: 'Where points came from' },
  heads: {
    pupil: 'Roster id',
    name: 'Name',
    squad: 'Squad',
    step: 'Step',
    what: 'What',
    points: 'Points',
    max: 'Of',
    confirmed: 'Confirmed',
    why: 'Why',
  },
  what: (plan, part) => {
    if (part.code === 'squad-criterion') return findLabel(plan, part.criterion);
    if (part.code === 'override') return 'Changed by hand';
    const station = plan.stations.find(({ code }) => code === part.station);
    return station ? `${station.code} ${station.place}` : part.station;
  },
  why: (plan, part) => {
    if (part.code === 'slot') return explainSlot(plan, part);
    if (part.code === 'squad-criterion') {
      return PARTS.criterion(findLabel(plan, part.criterion), part.max, part.confirmed);
    }
    return PARTS.byHand(change(part.change), PARTS.override[part.of], part.reason);
  },
  confirmed: (isConfirmed) => (isConfirmed ? 'yes' : 'no'),
  noMark: ({ state }) =>
    state === 'absent' || state === 'excused' ? NO_MARK[state] : 'no route of a squad to mark',
};
