import { randomUUID } from 'node:crypto';
import { access, rm } from 'node:fs/promises';
import path from 'node:path';
import type { CodedProblem, Outcome } from '../platform/outcome.ts';
import { fail } from '../platform/outcome.ts';

const TEMPORARY = /^\.routemark-.*\.tmp$/;

/** A path in a folder that nothing stands at: for what is written there before it is given its name. */
export function nameTemporary(folder: string): string {
  return path.join(folder, `.routemark-${process.pid}-${randomUUID().slice(0, 8)}.tmp`);
}

/** Whether a name is one of {@link nameTemporary}: in a lesson, what a power failure has left. */
export function isTemporary(name: string): boolean {
  return TEMPORARY.test(name);
}

/** Takes a temporary file away for a problem. */
export async function abandon<Problem extends CodedProblem>(
  temporary: string,
  problem: Problem,
): Promise<Outcome<never, Problem>> {
  await rm(temporary, { force: true }).catch(() => {});
  return fail(problem);
}

/** Whether something stands at a path, of whatever kind. */
export function isThere(file: string): Promise<boolean> {
  return access(file).then(
    () => true,
    () => false,
  );
}
