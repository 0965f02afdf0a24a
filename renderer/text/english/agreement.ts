import {
  type Agreement,
  type AgreementSubject,
  hasCommonMarks,
  type MarkingComparison,
} from '../../../src-core/marking/agreement/compare-markings.ts';
import { count, list } from './amounts.ts';

/** Landis & Koch, "The measurement of observer agreement for categorical data" (1977); for kappa without weights. */
const KAPPA_BANDS = [
  { above: 0.8, word: 'almost perfect' },
  { above: 0.6, word: 'substantial' },
  { above: 0.4, word: 'moderate' },
  { above: 0.2, word: 'fair' },
  { above: 0, word: 'slight' },
] as const;

/** Koo & Li, "A guideline of selecting and reporting intraclass correlation coefficients" (2016); from memory. */
const ICC_BANDS = [
  { from: 0.9, word: 'excellent' },
  { from: 0.75, word: 'good' },
  { from: 0.5, word: 'moderate' },
] as const;

/** With fewer, one clip more or less moves a figure by a whole band; our own choice. */
const FEW = 20;

/** Landis and Koch's word for a kappa without weights; other kinds of kappa must not be read by it (Warrens 2013). */
export function nameKappa(kappa: number): string {
  return KAPPA_BANDS.find(({ above }) => kappa > above)?.word ?? 'poor';
}

/** Koo and Li's word for an intraclass correlation. */
export function nameIcc(icc: number): string {
  return ICC_BANDS.find(({ from }) => icc >= from)?.word ?? 'poor';
}

/** What two people have marked, as the teacher calls it. */
export function nameSubject(subject: AgreementSubject): string {
  return subject.of === 'clip-points' ? 'Points of a clip' : subject.label;
}

/** A figure with two decimals; `not defined` where it is 0 / 0. */
export function figure(value: number | null): string {
  return value === null ? 'not defined' : value.toFixed(2).replace('-', '−');
}

/** What an agreement means, in a sentence or two. */
export function explainAgreement(subject: AgreementSubject, agreement: Agreement): string {
  const { pairs, same, kappa, icc } = agreement;
  const what = subject.of === 'squad-criterion' ? 'squad' : 'clip';
  if (pairs === 0) return `No ${what} was marked by both.`;
  const agreed = `The same for ${same} of ${count(pairs, what)}.`;
  const beyond =
    kappa === null
      ? 'Both gave one and the same answer throughout, so care cannot be told from chance: kappa is not defined.'
      : `Beyond what chance would give, that is ${nameKappa(kappa)} agreement.`;
  const byPoints =
    subject.of === 'clip-criterion' || icc === null
      ? ''
      : ` Point for point, the agreement is ${nameIcc(icc)}.`;
  const few = pairs < FEW ? ` With ${count(pairs, what)} only, take this as a hint.` : '';
  return `${agreed} ${beyond}${byPoints}${few}`;
}

function sayNothingCommon(oneOnly: number): string {
  const nothing = 'No clip has been marked by both yet';
  if (oneOnly === 0) return `${nothing}: go on marking.`;
  return `${nothing}. ${count(oneOnly, 'clip')} ${oneOnly === 1 ? 'is' : 'are'} marked by one only: go on marking.`;
}

/** All that is said of two markings beside the figures. */
export const AGREEMENT = {
  heads: [
    '',
    'marks by both',
    'same marks',
    'per cent',
    'kappa',
    'linear kappa',
    'quadratic kappa',
    'ICC(2,1)',
  ],
  title: (who: string) => `The lesson’s marking and ${who}’s`,
  toTalkAbout: (comparison: MarkingComparison) => {
    if (!hasCommonMarks(comparison)) return sayNothingCommon(comparison.clipsByOneOnly);
    return comparison.clips.length + comparison.squads.length === 0
      ? 'Nothing to talk about: wherever both have marked, they agree.'
      : 'To talk about:';
  },
  differs: (criteria: readonly string[]) => `${list(criteria)} seen differently`,
  gave: (criterion: string, first: number, second: number) => `${criterion}: ${first} and ${second} points`,
  /** Null: there is nothing more to say. */
  oneOnly: (comparison: MarkingComparison) =>
    comparison.clipsByOneOnly === 0 || !hasCommonMarks(comparison)
      ? null
      : `${count(comparison.clipsByOneOnly, 'clip')} marked whole by one of the two only; left out here.`,
  none: 'Nobody has marked this lesson a second time yet.',
  noneTodo: 'routemark mark LESSON --second NAME --clip … records a second marking, blind to the first.',
} as const;
