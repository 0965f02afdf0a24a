import type { Plan, SquadCode } from '../../lesson/plan.ts';
import type { ClipId } from '../../matching/observation.ts';
import { earnPoints } from '../clip-score.ts';
import type { Decisions } from '../decisions.ts';
import { findKappa, findShareAgreed, tabulate } from './cohens-kappa.ts';
import { findIntraclassCorrelations } from './intraclass-correlation.ts';

/** Two markings of one lesson, and what was marked in it. */
export interface TwoMarkings {
  readonly plan: Plan;
  readonly first: Decisions;
  readonly second: Decisions;
  /** Clips that fill a slot, in the order in which they are to be named. */
  readonly clips: readonly ClipId[];
}

/** How far two markings agree in one thing; a figure is null where it is not defined. */
export interface Agreement {
  /** Clips or squads that both have marked. */
  readonly pairs: number;
  readonly same: number;
  /** 0 to 1. */
  readonly share: number | null;
  readonly kappa: number | null;
  readonly linearKappa: number | null;
  readonly quadraticKappa: number | null;
  readonly icc: number | null;
}

/** What an agreement is about: a criterion of clips, what clips earn altogether, or a criterion of squads. */
export type AgreementSubject =
  | { readonly of: 'clip-criterion'; readonly code: string; readonly label: string }
  | { readonly of: 'clip-points' }
  | { readonly of: 'squad-criterion'; readonly code: string; readonly label: string };

/** A clip that the two see differently. */
export interface ClipToTalkAbout {
  readonly clip: ClipId;
  /** By criterion: what each said. */
  readonly differing: readonly { readonly code: string; readonly first: boolean; readonly second: boolean }[];
}

/** A squad that the two have given different points. */
export interface SquadToTalkAbout {
  readonly squad: SquadCode;
  readonly code: string;
  readonly first: number;
  readonly second: number;
}

/** Two markings side by side. */
export interface MarkingComparison {
  readonly subjects: readonly { readonly subject: AgreementSubject; readonly agreement: Agreement }[];
  /** Most differences first. */
  readonly clips: readonly ClipToTalkAbout[];
  readonly squads: readonly SquadToTalkAbout[];
  /** Clips that only one of the two has marked whole. */
  readonly clipsByOneOnly: number;
}

/** Whether there is anything that both have marked; where there is not, nothing can be said of how far they agree. */
export function hasCommonMarks({ subjects }: MarkingComparison): boolean {
  return subjects.some(({ agreement }) => agreement.pairs > 0);
}

type Pair = readonly [first: number, second: number];

/** Compares decisions with decisions: what the machine proposed and nobody took up is nobody's marking. */
export function compareMarkings(markings: TwoMarkings): MarkingComparison {
  const { plan } = markings;
  const clipSubjects = plan.rubric.clip.map(({ code, label }) => ({
    subject: { of: 'clip-criterion' as const, code, label },
    agreement: measureAgreement(pairAnswers(markings, code), [0, 1]),
  }));
  const points = pairClipPoints(markings);
  const squadSubjects = plan.rubric.squad.map(({ code, label }) => ({
    subject: { of: 'squad-criterion' as const, code, label },
    agreement: measureAgreement(pairSquadPoints(markings, code)),
  }));
  return {
    subjects: [
      ...clipSubjects,
      { subject: { of: 'clip-points' }, agreement: measureAgreement(points) },
      ...squadSubjects,
    ],
    clips: listDifferingClips(markings),
    squads: listDifferingSquads(markings),
    clipsByOneOnly: markings.clips.filter(
      (clip) => isWhole(plan, markings.first, clip) !== isWhole(plan, markings.second, clip),
    ).length,
  };
}

/**
 * Categories are the given ones, or every value that was given, in rising order: weights go by steps of the scale
 * that is in use.
 */
function measureAgreement(pairs: readonly Pair[], categories?: readonly number[]): Agreement {
  const used = categories ?? [...new Set(pairs.flat())].sort((one, other) => one - other);
  const table = tabulate(pairs, used);
  return {
    pairs: pairs.length,
    same: pairs.filter(([first, second]) => first === second).length,
    share: findShareAgreed(table),
    kappa: findKappa(table),
    linearKappa: findKappa(table, 'linear'),
    quadraticKappa: findKappa(table, 'quadratic'),
    icc: findIntraclassCorrelations(pairs)?.['ICC(2,1)'] ?? null,
  };
}

function pairAnswers({ first, second, clips }: TwoMarkings, code: string): readonly Pair[] {
  return clips.flatMap((clip): Pair[] => {
    const one = first.answers.get(clip)?.get(code);
    const other = second.answers.get(clip)?.get(code);
    return one === undefined || other === undefined ? [] : [[Number(one), Number(other)]];
  });
}

function isWhole(plan: Plan, { answers }: Decisions, clip: ClipId): boolean {
  return plan.rubric.clip.every(({ code }) => answers.get(clip)?.has(code) === true);
}

function pairClipPoints({ plan, first, second, clips }: TwoMarkings): readonly Pair[] {
  const earn = ({ answers }: Decisions, clip: ClipId) =>
    earnPoints(plan, (criterion) => answers.get(clip)?.get(criterion) === true);
  return clips
    .filter((clip) => isWhole(plan, first, clip) && isWhole(plan, second, clip))
    .map((clip): Pair => [earn(first, clip), earn(second, clip)]);
}

function pairSquadPoints({ plan, first, second }: TwoMarkings, code: string): readonly Pair[] {
  return plan.squads.flatMap(({ code: squad }): Pair[] => {
    const one = first.squadPoints.get(squad)?.get(code);
    const other = second.squadPoints.get(squad)?.get(code);
    return one === undefined || other === undefined ? [] : [[one, other]];
  });
}

function listDifferingClips({ plan, first, second, clips }: TwoMarkings): readonly ClipToTalkAbout[] {
  return clips
    .map((clip): ClipToTalkAbout => {
      const differing = plan.rubric.clip.flatMap(({ code }) => {
        const one = first.answers.get(clip)?.get(code);
        const other = second.answers.get(clip)?.get(code);
        if (one === undefined || other === undefined || one === other) return [];
        return [{ code, first: one, second: other }];
      });
      return { clip, differing };
    })
    .filter(({ differing }) => differing.length > 0)
    .sort((one, other) => other.differing.length - one.differing.length);
}

function listDifferingSquads({ plan, first, second }: TwoMarkings): readonly SquadToTalkAbout[] {
  return plan.squads.flatMap(({ code: squad }) =>
    plan.rubric.squad.flatMap(({ code }) => {
      const one = first.squadPoints.get(squad)?.get(code);
      const other = second.squadPoints.get(squad)?.get(code);
      if (one === undefined || other === undefined || one === other) return [];
      return [{ squad, code, first: one, second: other }];
    }),
  );
}
