import {
  AGREEMENT,
  explainAgreement,
  figure,
  nameSubject,
} from '../../../renderer/text/english/agreement.ts';
import type { Names } from '../../../renderer/text/names.ts';
import { gradeLesson } from '../../app/grade-lesson.ts';
import type { GradedLesson } from '../../app/graded-lesson.ts';
import { openJournal } from '../../app/open-lesson.ts';
import { compareWithSecond } from '../../app/second-marking.ts';
import type { Problem } from '../../contract/problem.ts';
import { getLessonNames } from '../../host/lesson-names.ts';
import { findMarkerFile, listSecondMarkers, withSecondJournal } from '../../host/second-marks.ts';
import { hasCommonMarks } from '../../marking/agreement/compare-markings.ts';
import { type LessonOptions, type OpenFolder, openFolder } from '../open-folder.ts';
import { formatJson, sayProblems, toJsonProblem } from '../say.ts';
import { formatTable } from '../table.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `agree` as typed. */
export interface AgreeOptions extends LessonOptions {
  /** One second marker; all of them unless told. */
  readonly second?: string;
}

type Comparison = ReturnType<typeof compareWithSecond>;

/** A second marker's comparison with the lesson's own marking. */
interface SecondComparison {
  readonly who: string;
  readonly comparison: Comparison;
  readonly problems: readonly Problem[];
}

/** `agree <lesson>`: how far second markings agree with the lesson's, per criterion, and which clips to talk about. */
export async function runAgree(folder: string, options: AgreeOptions, terminal: Terminal): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const all = await listSecondMarkers(folder);
  const wanted = options.second === undefined ? null : findMarkerFile(options.second);
  const files = wanted === null ? all : all.filter((file) => file === wanted);
  if (files.length === 0) {
    terminal.say(`! ${AGREEMENT.none}\n  ${AGREEMENT.noneTodo}\n`);
    return 2;
  }
  const graded = await gradeLesson(open.ports, open.lesson, terminal.job);
  const compared = await Promise.all(files.map((file) => compareOne(open, { folder, file, graded })));
  const problems = [...open.problems, ...compared.flatMap((one) => one.problems)];
  const names = getLessonNames(graded);
  if (options.json) terminal.write(formatJson(describeAsData(compared, problems, names)));
  else {
    terminal.write(compared.map((one) => describeComparison(one, graded, names)).join('\n'));
    sayProblems(terminal, problems, names);
  }
  return compared.some(({ comparison }) => comparison.clips.length + comparison.squads.length > 0) ? 1 : 0;
}

async function compareOne(
  { ports }: OpenFolder,
  { folder, file, graded }: { readonly folder: string; readonly file: string; readonly graded: GradedLesson },
): Promise<SecondComparison> {
  const journal = await openJournal(withSecondJournal(ports, folder, file));
  const { decisions } = journal.ok ? journal.value.state : graded.lesson.journal;
  const who = journal.ok ? (journal.value.events.at(-1)?.who ?? file) : file;
  const empty = { ...decisions, answers: new Map(), squadPoints: new Map() };
  return {
    who,
    comparison: compareWithSecond(graded, journal.ok ? decisions : empty),
    problems: journal.problems,
  };
}

function describeComparison(
  { who, comparison }: SecondComparison,
  { lesson }: GradedLesson,
  names: Names,
): string {
  const title = `${AGREEMENT.title(who)}\n`;
  if (!hasCommonMarks(comparison)) return `${title}${AGREEMENT.toTalkAbout(comparison)}\n`;
  const rows = comparison.subjects.map(({ subject, agreement }) => [
    nameSubject(subject),
    String(agreement.pairs),
    String(agreement.same),
    agreement.share === null ? '–' : `${Math.round(agreement.share * 100)}`,
    ...[agreement.kappa, agreement.linearKappa, agreement.quadraticKappa, agreement.icc].map(figure),
  ]);
  const sentences = comparison.subjects.map(
    ({ subject, agreement }) => `${nameSubject(subject)}: ${explainAgreement(subject, agreement)}`,
  );
  const label = (code: string) =>
    [...lesson.plan.rubric.clip, ...lesson.plan.rubric.squad].find((one) => one.code === code)?.label ?? code;
  const talk = [
    ...comparison.clips.map(
      ({ clip, differing }) =>
        `${names.clip(clip)}: ${AGREEMENT.differs(differing.map(({ code }) => label(code)))}`,
    ),
    ...comparison.squads.map(
      ({ squad, code, first, second }) =>
        `${names.squad(squad)}: ${AGREEMENT.gave(label(code), first, second)}`,
    ),
  ];
  const oneOnly = AGREEMENT.oneOnly(comparison);
  return [
    title,
    formatTable([[...AGREEMENT.heads], ...rows], '  '),
    ...sentences.map((sentence) => `${sentence}\n`),
    `${AGREEMENT.toTalkAbout(comparison)}\n`,
    ...talk.map((line) => `  ${line}\n`),
    oneOnly === null ? '' : `${oneOnly}\n`,
  ].join('');
}

function describeAsData(
  compared: readonly SecondComparison[],
  problems: readonly Problem[],
  names: Names,
): object {
  return {
    markings: compared.map(({ who, comparison }) => ({
      who,
      ...comparison,
      subjects: comparison.subjects.map(({ subject, agreement }) => ({
        ...subject,
        ...agreement,
        means: explainAgreement(subject, agreement),
      })),
    })),
    problems: problems.map((problem) => toJsonProblem(problem, names)),
  };
}
