import path from 'node:path';
import { count } from '../../../renderer/text/english/amounts.ts';
import { checkBundle } from '../../app/export-bundle.ts';
import type { Problem } from '../../contract/problem.ts';
import { readBundle } from '../../host/read-bundle.ts';
import { formatJson, PLAIN_NAMES, sayProblems, toJsonProblem } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** `validate <bundle>`: holds a set of OneRoster files, of ours or of others, to the standard's rules. */
export async function runValidate(
  place: string,
  options: { readonly json?: boolean },
  terminal: Terminal,
): Promise<ExitCode> {
  const bundle = await readBundle(path.resolve(place));
  const found = bundle.ok ? checkBundle(bundle.value) : null;
  const problems = found?.faults ?? bundle.problems;
  if (options.json) terminal.write(formatJson(describeAsData(found, problems)));
  else {
    if (found?.version) terminal.write(`${place}: ${describeCheck(found)}\n`);
    sayProblems(terminal, problems, PLAIN_NAMES);
  }
  if (!found?.version) return 2;
  return problems.length === 0 ? 0 : 1;
}

type Found = ReturnType<typeof checkBundle>;

function describeCheck({ version, rows, faults }: Found): string {
  const verdict = faults.length === 0 ? 'every rule is kept' : `${count(faults.length, 'rule')} broken`;
  return `OneRoster ${version}, ${count(rows.size, 'table')}; ${verdict}.`;
}

function describeAsData(found: Found | null, problems: readonly Problem[]): object {
  const tables = Object.fromEntries([...(found?.rows ?? [])].map(([table, rows]) => [table, rows.length]));
  const listed = problems.map((problem) => toJsonProblem(problem, PLAIN_NAMES));
  return { version: found?.version ?? null, tables, problems: listed };
}
