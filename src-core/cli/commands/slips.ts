import { count } from '../../../renderer/text/english/amounts.ts';
import { nameSlip, SLIP, sayNext, sayWell, writeSlip } from '../../../renderer/text/english/slips.ts';
import { draftSlips, type Slip } from '../../app/draft-slips.ts';
import { gradeLesson } from '../../app/grade-lesson.ts';
import type { GradedLesson } from '../../app/graded-lesson.ts';
import { getLessonNames } from '../lesson-names.ts';
import { type LessonOptions, openFolder } from '../open-folder.ts';
import { formatJson, sayProblems } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `slips` as typed. */
export interface SlipsOptions extends LessonOptions {
  /** `squads` or `pupils`. */
  readonly of: string;
  /** One pupil's alone, by the roster's id. */
  readonly pupil?: string;
}

/** `slips <lesson>`: what each squad or pupil did well and can do next, as Markdown, from what was confirmed. */
export async function runSlips(folder: string, options: SlipsOptions, terminal: Terminal): Promise<ExitCode> {
  const kind = options.pupil === undefined ? options.of : 'pupils';
  if (kind !== 'squads' && kind !== 'pupils') {
    terminal.say(`! There are no slips of “${kind}”. Write --of squads or --of pupils.\n`);
    return 2;
  }
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const graded = await gradeLesson(open.ports, open.lesson, terminal.job);
  const { pupil } = options;
  const slips = draftSlips(graded, kind).filter((slip) => pupil === undefined || slip.pupil?.id === pupil);
  if (slips.length === 0) {
    terminal.say(`! There is no pupil “${pupil ?? ''}” in roster.csv.\n`);
    return 2;
  }
  const { plan } = graded.lesson;
  if (options.json) terminal.write(formatJson(slips.map((slip) => describeAsData(slip, graded))));
  else terminal.write(slips.map((slip) => writeSlip(plan, slip)).join('\n---\n\n'));
  sayProblems(terminal, open.problems, getLessonNames(graded));
  const waiting = graded.score.squads
    .flatMap(({ slots }) => slots)
    .filter(({ state }) => state === 'pencilled' || state === 'flagged');
  if (waiting.length === 0) return 0;
  terminal.say(`! ${count(waiting.length, 'clip')} not confirmed yet; the slips say nothing about them.\n`);
  return 1;
}

function describeAsData(slip: Slip, { lesson: { plan } }: GradedLesson): object {
  return {
    ...slip,
    pupil: slip.pupil?.id ?? null,
    heading: nameSlip(plan, slip),
    says: {
      well: slip.well.map((point) => sayWell(plan, point)),
      next: slip.next.map((point) => sayNext(plan, point)),
      instead: slip.presence === 'there' ? null : SLIP[slip.presence],
    },
  };
}
