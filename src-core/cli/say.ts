import { describeTypedProblem } from '../../renderer/text/english/command-line-problems.ts';
import { namePlanPath } from '../../renderer/text/english/plan-place.ts';
import type { Names } from '../../renderer/text/names.ts';
import type { Problem } from '../contract/problem.ts';
import { toOneLine } from './one-line.ts';
import type { ExitCode, Terminal } from './terminal.ts';

/** Names for where no lesson is open: every code stands for itself. */
export const PLAIN_NAMES: Names = {
  squad: (code) => code,
  station: (code) => code,
  planPlace: namePlanPath,
  clip: (id) => id,
  time: (ms) => new Date(ms).toISOString(),
};

/** A problem as a technician reads it in JSON: its data, and the words. */
export function toJsonProblem(problem: Problem, names: Names): object {
  return { ...problem, ...describeTypedProblem(problem, names) };
}

/** Lists problems on the error stream, each with what to do. */
export function sayProblems(terminal: Terminal, problems: readonly Problem[], names: Names): void {
  for (const problem of problems) {
    const { what, todo } = describeTypedProblem(problem, names);
    terminal.say(`! ${toOneLine(what)}${todo === null ? '' : `\n  ${toOneLine(todo)}`}\n`);
  }
}

/** JSON as the command line prints it: two spaces, a line end; infinite numbers become null. */
export function formatJson(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}

/** 0 where nothing needs the teacher, else 1. */
export function getExitCode(problems: readonly Problem[], names: Names = PLAIN_NAMES): ExitCode {
  return problems.some((problem) => describeTypedProblem(problem, names).todo !== null) ? 1 : 0;
}
