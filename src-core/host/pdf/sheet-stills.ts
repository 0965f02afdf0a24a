import type { StopSignal, StripPicture } from '../../app/ports.ts';
import type { Progress } from '../../contract/progress.ts';
import type { StripStill } from '../../evidence/strip.ts';
import { MS_PER_SECOND } from '../../platform/units.ts';
import type { SquadGrades } from '../../printing/grade-pages.ts';
import type { RowStrip } from '../../printing/grade-rows.ts';
import type { PrintProblem } from '../../printing/print-problem.ts';
import { mapAll } from '../map-all.ts';
import { cutStills } from '../media/still.ts';
import { findAspect } from './draw-pages.ts';
import { type ClipPictures, retouchStills } from './retouch-stills.ts';

/** Where stills come from: what watching left, else the clip itself. */
export interface StillSource {
  /** Null: the lesson has no such clip, or it is gone. */
  readonly findFile: (clip: string) => string | null;
  readonly readStrip: (clip: string, wanted: readonly StripStill[]) => Promise<readonly StripPicture[]>;
}

/** A kept picture farther than this from the moment wanted shows another moment; one is cut instead. */
const NEAR_SECONDS = 0.5;

/** Pixels: as high as those that watching leaves. */
const HEIGHT = 126;

const USUAL_ASPECT = 16 / 9;

type Pictured = Extract<RowStrip, { look: 'shown' | 'blurred' }>;

/** All stills of a grade sheet, by clip; blurred and grey ones are already so. A clip that lacks some is a problem. */
export async function readSheetStills(
  squads: readonly SquadGrades[],
  { source, isGrey }: { readonly source: StillSource; readonly isGrey: boolean },
  job: { readonly signal: StopSignal; readonly onProgress: (progress: Progress) => void },
): Promise<{
  readonly pictures: ReadonlyMap<string, ClipPictures>;
  readonly problems: readonly PrintProblem[];
}> {
  const strips = squads.flatMap(({ rows }) =>
    rows.flatMap(({ strip }) => (strip && strip.look !== 'none' ? [strip] : [])),
  );
  let done = 0;
  const plain = await mapAll(strips, async (strip): Promise<ClipPictures> => {
    job.signal.throwIfAborted();
    const jpegs = await readStrip(strip, source);
    job.onProgress({ step: 'stills', done: ++done, total: strips.length });
    const first = jpegs.find((jpeg) => jpeg !== null);
    return { jpegs, aspect: (first && findAspect(first)) ?? USUAL_ASPECT };
  });
  const isBlurred = strips.some(({ look }) => look === 'blurred');
  const ready = await retouchStills(plain, { isBlurred, isGrey });
  return {
    pictures: new Map(strips.map(({ clip }, at) => [clip, ready[at] ?? { jpegs: [], aspect: USUAL_ASPECT }])),
    problems: strips.flatMap(({ clip }, at) =>
      ready[at]?.jpegs.includes(null) === false ? [] : [{ code: 'print-stills-missing', clip }],
    ),
  };
}

async function readStrip({ clip, stills }: Pictured, source: StillSource): Promise<(Uint8Array | null)[]> {
  const kept = await source.readStrip(clip, stills);
  const near = stills.map(({ atSeconds }, at) => {
    const picture = kept[at];
    const isNear = picture && Math.abs(picture.shownSeconds - atSeconds) <= NEAR_SECONDS;
    // One that a full disk or a stick has damaged is cut anew.
    return isNear && findAspect(picture.jpeg) !== null ? picture.jpeg : null;
  });
  const file = source.findFile(clip);
  if (file === null || !near.includes(null)) return near;
  const moments = stills.map(({ atSeconds }) => Math.round(atSeconds * MS_PER_SECOND));
  const wanted = moments.filter((_, at) => near[at] === null);
  const cut = await cutStills({ clip, file, height: HEIGHT }, wanted);
  return near.map((jpeg, at) => jpeg ?? cut[wanted.indexOf(moments[at] ?? 0)] ?? null);
}
