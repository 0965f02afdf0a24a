import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { PupilScore, SquadScore } from '../../../src-core/marking/points.ts';
import type { Sum, SumPart } from '../../../src-core/marking/sum.ts';
import { nameShortfall } from '../../text/english/account.ts';
import { change, SCORES } from '../../text/english/scores.ts';

/** One line of an explained sum. */
export interface SumLine {
  readonly key: string;
  readonly words: string;
  /** What it adds; null where the line only says something. */
  readonly points: number | null;
  /** Said instead of points. */
  readonly instead: string | null;
  /** It is proposed, and nobody stands behind it yet. */
  readonly isPencilled: boolean;
}

const { parts: WORDS } = SCORES;

/** Where each point of a squad came from. */
export function explainSquad(plan: Plan, score: SquadScore): readonly SumLine[] {
  return explainSum(plan, score.sum);
}

/** Where each point of a pupil came from, what counts for a late one first. Empty for pupils without a mark. */
export function explainPupil(plan: Plan, score: PupilScore): readonly SumLine[] {
  if (!score.sum) return [];
  const { attendance, arrived } = score.attendance;
  const isShort = attendance === 'late' && arrived !== null && score.notes.length === 0;
  const came: SumLine[] = isShort
    ? [say('came', WORDS.came(arrived, score.slots), WORDS.toEarn(addMax(score.sum)))]
    : [];
  return [...came, ...explainSum(plan, score.sum)];
}

function explainSum(plan: Plan, sum: Sum): readonly SumLine[] {
  const full = sum.parts.filter((part) => part.code === 'slot' && isFull(part));
  const others = sum.parts.filter((part) => !full.includes(part));
  return [...explainFull(full), ...others.map((part, at) => explainPart(plan, part, at))];
}

function isFull(part: Extract<SumPart, { code: 'slot' }>): boolean {
  return part.reason === 'earned' && part.unmet.length === 0;
}

/** Slots that gave all they could are told in one line for ink and one for pencil. */
function explainFull(full: readonly SumPart[]): SumLine[] {
  return [true, false].flatMap((isConfirmed): SumLine[] => {
    const own = full.flatMap((part) => (part.code === 'slot' && part.confirmed === isConfirmed ? part : []));
    if (own.length === 0) return [];
    const points = own.reduce((total, part) => total + part.points, 0);
    const words = WORDS.earned(own.map(({ station }) => station));
    return [{ key: `full-${isConfirmed}`, words, points, instead: null, isPencilled: !isConfirmed }];
  });
}

function explainPart(plan: Plan, part: SumPart, at: number): SumLine {
  const line = { key: String(at), points: part.points, instead: null };
  if (part.code === 'slot') {
    // What nobody has answered, nobody has proposed either.
    const isPencilled = !part.confirmed && (part.reason === 'order' || part.open.length === 0);
    return { ...line, words: explainSlot(plan, part), isPencilled };
  }
  if (part.code === 'squad-criterion') {
    const label = plan.rubric.squad.find(({ code }) => code === part.criterion)?.label ?? part.criterion;
    return {
      ...line,
      words: WORDS.criterion(label, part.max, part.confirmed),
      isPencilled: false,
    };
  }
  const whose = WORDS.override[part.of];
  return { ...line, words: WORDS.byHand(change(part.change), whose, part.reason), isPencilled: false };
}

function explainSlot(plan: Plan, part: Extract<SumPart, { code: 'slot' }>): string {
  if (part.reason === 'no-clip') return WORDS.noClip(part.station);
  if (part.reason === 'order') return WORDS.order(part.station);
  const label = (code: string) =>
    plan.rubric.clip.find((criterion) => criterion.code === code)?.label.toLowerCase() ?? code;
  return nameShortfall(part, label);
}

function addMax(sum: Sum): number {
  return sum.parts.reduce((total, part) => total + (part.code === 'slot' ? part.max : 0), 0);
}

function say(key: string, words: string, instead: string): SumLine {
  return { key, words, points: null, instead, isPencilled: false };
}
