import type { Problem } from '../../src-core/contract/problem.ts';
import { describeProblem } from '../text/english/problems.ts';
import type { Names } from '../text/names.ts';

/** What is wrong, a line each, read out at once: what happened and what to do about it. */
export function ProblemLines({
  problems,
  names,
  className = 'need',
}: {
  readonly problems: readonly Problem[];
  readonly names: Names;
  readonly className?: string;
}) {
  return problems.map((problem) => {
    const { what, todo } = describeProblem(problem, names);
    return (
      <p key={what} className={className} role="alert">
        <b>{what}</b> {todo}
      </p>
    );
  });
}
