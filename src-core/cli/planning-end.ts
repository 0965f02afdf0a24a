import type { Problem } from '../contract/problem.ts';
import { getPlanNames } from '../host/lesson-names.ts';
import type { OpenFolder } from './open-folder.ts';
import { formatJson, getExitCode, PLAIN_NAMES, sayProblems, toJsonProblem } from './say.ts';
import type { ExitCode, Terminal } from './terminal.ts';

/** Options that every planning command takes. */
export interface PlanOptions {
  readonly json?: boolean;
  /** Write what was found; otherwise it is only shown. */
  readonly save?: boolean;
}

/** Where a planning command talks to, and about which lesson; null: about none that is open. */
export interface PlanTalk {
  readonly terminal: Terminal;
  readonly options: PlanOptions;
  readonly open: OpenFolder | null;
}

/** Says why nothing came of it, in words and where asked for as JSON. */
export function refuse({ terminal, options, open }: PlanTalk, problems: readonly Problem[]): ExitCode {
  const names = open ? getPlanNames(open.lesson) : PLAIN_NAMES;
  sayProblems(terminal, problems, names);
  if (options.json) {
    terminal.write(formatJson({ problems: problems.map((problem) => toJsonProblem(problem, names)) }));
  }
  return 2;
}

/** What a command found, and what it has to say beside it. */
export interface Finding {
  readonly json: object;
  readonly text: string;
  readonly problems: readonly Problem[];
}

/** Prints what was found; 1 where something needs a look. */
export function report({ terminal, options, open }: PlanTalk, { json, text, problems }: Finding): ExitCode {
  const names = open ? getPlanNames(open.lesson) : PLAIN_NAMES;
  if (options.json) {
    const listed = problems.map((problem) => toJsonProblem(problem, names));
    terminal.write(formatJson({ ...json, problems: listed }));
  } else {
    terminal.write(text);
    sayProblems(terminal, problems, names);
  }
  return getExitCode(problems, names);
}
