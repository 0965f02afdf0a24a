import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { fail, type Outcome } from '../../platform/outcome.ts';
import type { StorageProblem } from '../../platform/storage-problem.ts';
import { writeFileAtomically } from '../atomic-write.ts';
import { describeWriteError } from '../write-error.ts';

/** Writes a drawn file whole or not at all, and makes its folder where it is not there. */
export async function writePdf(file: string, bytes: Uint8Array): Promise<Outcome<number, StorageProblem>> {
  try {
    await mkdir(path.dirname(file), { recursive: true });
  } catch (error) {
    return fail(describeWriteError(error, path.dirname(file)));
  }
  return writeFileAtomically(file, bytes);
}
