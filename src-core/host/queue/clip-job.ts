import { createHash } from 'node:crypto';
import * as z from 'zod';
import type { EvidenceProblem } from '../../evidence/evidence-problem.ts';
import { cardsAnalyser, lookAnalyser, motionAnalyser, stillsAnalyser, watchAnalyser } from '../analysers.ts';
import type { AnalysisTask } from '../analysis-task.ts';

/** What goes over the queue for one clip: where it lies and what its content is called, nothing of what it shows. */
export const clipJobSchema = z.strictObject({
  kind: z.enum(['look', 'watch']),
  /** Absolute path of the clip, the same on every machine that works here. */
  path: z.string().min(1),
  /** Absolute path of the lesson's evidence. */
  cacheFolder: z.string().min(1),
  contentId: z.string().regex(/^[0-9a-f]{16}$/),
});

/** A clip to be looked at or watched whole. */
export type ClipJob = z.infer<typeof clipJobSchema>;

const detail = z.string();

/** What comes back: what went wrong, if anything. What was found stands in the lesson's evidence. */
export const clipJobEndSchema: z.ZodType<ClipJobEnd> = z.strictObject({
  problems: z.array(
    z.discriminatedUnion('code', [
      z.strictObject({ code: z.literal('ffmpeg-missing'), tried: z.array(z.string()) }),
      z.strictObject({ code: z.literal('decode-failed'), detail }),
      z.strictObject({ code: z.literal('decode-cut-short'), lastSeconds: z.number(), detail }),
      z.strictObject({ code: z.literal('decode-interrupted'), detail }),
      z.strictObject({ code: z.literal('decode-timed-out'), limitSeconds: z.number() }),
      z.strictObject({ code: z.literal('decode-cancelled') }),
      z.strictObject({ code: z.literal('card-reader-failed'), detail }),
      z.strictObject({ code: z.literal('analysis-failed'), detail }),
    ]),
  ),
});

/** How a job ended; without problems where it is empty. */
export interface ClipJobEnd {
  readonly problems: readonly EvidenceProblem[];
}

/** The job of a task that decodes; null for one that reads the cache alone and is done where it is asked for. */
export function findClipJob({ kind, clip, cacheFolder }: AnalysisTask): ClipJob | null {
  return kind === 'movement' ? null : { kind, path: clip.path, cacheFolder, contentId: clip.contentId };
}

/** The task of a job, as a worker does it. */
export function buildTask({ kind, path, cacheFolder, contentId }: ClipJob): AnalysisTask {
  const place = { cacheFolder, clip: { path, contentId } };
  return kind === 'look' ? { ...place, kind, searchCards: true } : { ...place, kind, threads: 1 };
}

/** What makes evidence of these kinds old. */
const VERSIONS: Readonly<Record<ClipJob['kind'], readonly { readonly version: number }[]>> = {
  look: [cardsAnalyser, lookAnalyser],
  watch: [motionAnalyser, stillsAnalyser, watchAnalyser, cardsAnalyser, lookAnalyser],
};

/**
 * The identity of a job: what is to be done, of which content, by which versions, for which lesson. Whoever asks for
 * the same twice asks once.
 */
export function nameClipJob({ kind, cacheFolder, contentId }: ClipJob): string {
  const versions = VERSIONS[kind].map(({ version }) => version).join('.');
  const lesson = createHash('sha256').update(cacheFolder).digest('hex').slice(0, 12);
  return `${kind}-${contentId}-${versions}-${lesson}`;
}
