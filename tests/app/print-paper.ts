import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';
import { draftPack } from '../../src-core/app/print-pack.ts';
import { printPack } from '../../src-core/host/pdf/print-pack.ts';
import type { Plan } from '../../src-core/lesson/plan.ts';
import type { Pupil } from '../../src-core/lesson/roster.ts';
import { PACK_PARTS, type PackOrder } from '../../src-core/printing/pack.ts';

const job = { signal: new AbortController().signal, onProgress: () => {} };

/** Every paper, in colour and in grey. */
export const LOOKS = (['a4', 'letter'] as const).flatMap((paper) =>
  [false, true].map((isGrey) => [paper, isGrey ? 'grey' : 'colour', { paper, isGrey }] as const),
);

/** Prints a lesson's pack into one file, for one test; the whole pack on A4 in colour unless said otherwise. */
export async function print(
  lesson: { readonly plan: Plan; readonly pupils: readonly Pupil[] },
  order: Partial<PackOrder> = {},
  lessonFolder = '',
) {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-print-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  const file = path.join(folder, 'pack.pdf');
  const draft = draftPack(lesson, { parts: [...PACK_PARTS], paper: 'a4', isGrey: false, ...order });
  const printed = await printPack(draft, { lessonFolder, file, replace: false }, job);
  return { file, problems: printed.problems, pageCount: printed.ok ? printed.value.pageCount : 0 };
}
