import { count } from '../../../renderer/text/english/amounts.ts';
import { checkReadiness, findLooseEnds } from '../../app/edit-plan.ts';
import { findMissingPhotos } from '../../host/find-missing-photos.ts';
import { getPlanNames } from '../../host/lesson-names.ts';
import { openFolder } from '../open-folder.ts';
import { formatJson, getExitCode, sayProblems, toJsonProblem } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** `check <lesson>`: whether plan and roster are sound for class and for marking, before any clip is read. */
export async function runCheck(
  folder: string,
  options: { readonly json?: boolean },
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const { lesson } = open;
  const { plan, pupils } = lesson;
  // Why nobody is in the class is said by what is wrong with the roster.
  const ends = findLooseEnds(plan, pupils).filter(({ code }) => code !== 'plan-class-empty');
  const photos = await findMissingPhotos(plan, folder);
  const problems = [...open.problems, ...checkReadiness(plan), ...ends, ...photos];
  const names = getPlanNames(lesson);
  if (options.json) {
    const counts = { stations: plan.stations.length, squads: plan.squads.length, pupils: pupils.length };
    terminal.write(
      formatJson({ ...counts, problems: problems.map((problem) => toJsonProblem(problem, names)) }),
    );
  } else {
    const found = [
      count(plan.stations.length, 'station'),
      count(plan.squads.length, 'squad'),
      count(pupils.length, 'pupil'),
    ];
    const verdict = problems.length === 0 ? 'nothing to mend' : count(problems.length, 'problem');
    terminal.write(`${plan.lesson.title}, ${plan.lesson.className}: ${found.join(', ')}; ${verdict}.\n`);
    sayProblems(terminal, problems, names);
  }
  return getExitCode(problems, names);
}
