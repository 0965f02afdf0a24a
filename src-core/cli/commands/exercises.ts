import { readFile } from 'node:fs/promises';
import { PLANNING } from '../../../renderer/text/english/planning.ts';
import { getHomeFolder } from '../../host/desk/desk-record.ts';
import { readExercises, takeExercises } from '../../host/own-library.ts';
import { describeReadError } from '../../host/write-error.ts';
import { type PlanOptions, refuse, report } from '../planning-end.ts';
import { formatTable } from '../table.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `exercises` as typed. */
export interface ExercisesOptions extends PlanOptions {
  /** A library of the teacher's own, to be taken over. */
  readonly take?: string;
  /** Forget the teacher's own again. */
  readonly forget?: boolean;
}

/** `exercises`: the library to choose from; `--take` puts a teacher's own into it. */
export async function runExercises(options: ExercisesOptions, terminal: Terminal): Promise<ExitCode> {
  const talk = { terminal, options, open: null };
  const home = getHomeFolder();
  let text = options.forget ? '' : null;
  if (options.take !== undefined) {
    try {
      text = await readFile(options.take, 'utf8');
    } catch (error) {
      return refuse(talk, [describeReadError(error, options.take)]);
    }
  }
  const shelf = text === null ? await readExercises(home) : await takeExercises(home, text);
  if (!shelf.ok) return refuse(talk, shelf.problems);
  const rows = shelf.value.map(({ code, name, cycleSeconds: [from, to], countsAs }) => [
    code,
    name,
    `${from}–${to} s`,
    countsAs,
  ]);
  return report(talk, {
    json: { exercises: shelf.value },
    text: `${formatTable(rows)}${PLANNING.tempo}\n`,
    problems: shelf.problems,
  });
}
