import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkWholePlan } from '../../../src-core/app/edit-plan.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { walkPlan } from '../../../src-core/lesson/walk/walk-plan.ts';
import { canReadPaper, readWords } from '../../app/paper.ts';
import { print } from '../../app/print-paper.ts';
import { plannedLesson } from './planned-lesson.ts';
import { grade, type SaidClip } from './small-clips.ts';

/** What a simulated class films: a clip at each visit, its card in the picture. */
function film(plan: Plan, seed: number): { readonly clips: readonly SaidClip[]; readonly inTime: boolean } {
  const { visits, endSeconds, workSeconds } = walkPlan(plan, { seed, paceSpread: 0.3 });
  const begin = (9 * 60 + plan.timing.warmUpMinutes) * 60;
  const clips = visits.map(({ squad, slot, station, startSeconds }): SaidClip => {
    const path = `${squad}/IMG_${String(slot + 1).padStart(4, '0')}.MOV`;
    const at = new Date((begin + startSeconds) * 1000).toISOString().slice(11, 19);
    const file = { path, name: path.split('/')[1] ?? '', sizeBytes: 1, modifiedMs: 0 };
    return { id: `${squad}-${slot}`, paths: [path], at, station, change: { copies: [{ squad, file }] } };
  });
  return { clips, inTime: endSeconds <= (workSeconds ?? 0) };
}

/** How many of the plans are printed too: enough for every kind of page and length of text. */
const MOST_PRINTED = 12;

/** The block of the pack's pages, in the middle of the paper, and half a millimetre around it; in points. */
const BLOCK = { width: (191 / 25.4) * 72, height: (260 / 25.4) * 72 };

/** Prints the plan's whole pack; gives what went wrong, and the words that poppler finds outside the pages' block. */
async function printWhole(plan: Plan, paper: 'a4' | 'letter') {
  const { file, problems, pageCount } = await print({ plan, pupils: [] }, { paper });
  const pages = canRead ? await readWords(file) : [];
  const outside = pages.flatMap(({ width, height, words }) => {
    const [side, top] = [(width - BLOCK.width) / 2, (height - BLOCK.height) / 2];
    return words.filter(({ box: [left, up, right, down] }) => {
      // A word's box is as high as its font allows, a quarter more than its letters are.
      const spare = (down - up) / 4;
      return left < side || right > width - side || up + spare < top || down - spare > height - top;
    });
  });
  const isBlank = pages.some(({ words }) => words.length === 0);
  return { problems, outside: outside.map(({ text }) => text), isBlank, pageCount };
}

const canRead = canReadPaper();

test('every plan that stands the check is printed, walked, matched and marked with full points and no flag', async () => {
  let walked = 0;
  let printed = 0;
  await fc.assert(
    fc.asyncProperty(plannedLesson, async ({ plan, hasRoutes, seed }) => {
      const problems = checkWholePlan(plan);
      // Without routes every squad would stand at A: the check must say so by itself.
      if (!hasRoutes) expect(problems.length > 0 || plan.squads.length === 1).toBe(true);
      if (problems.length > 0) return;
      const { clips, inTime } = film(plan, seed);
      fc.pre(inTime);
      if (printed < MOST_PRINTED) {
        const { pageCount, ...pack } = await printWhole(plan, seed % 2 === 0 ? 'a4' : 'letter');
        expect(pack).toEqual({ problems: [], outside: [], isBlank: false });
        expect(pageCount).toBeGreaterThan(plan.stations.length + plan.squads.length);
        printed += 1;
      }
      expectFullPoints(plan, clips);
      walked += 1;
    }),
    // Shrinking would print every smaller plan too.
    { numRuns: 120, seed: 7, endOnFailure: true },
  );
  // The property would hold of nothing at all: most plans must really have been walked.
  expect(walked).toBeGreaterThan(50);
  expect(printed).toBe(MOST_PRINTED);
}, 240_000);

function expectFullPoints(plan: Plan, clips: readonly SaidClip[]): void {
  const confirmed = clips.map(({ id }) => ({
    kind: 'clip-confirmed' as const,
    clip: id,
    answers: { place: true, reps: true },
  }));
  const { flags, aside, squads, score } = grade(clips, confirmed, plan);
  expect(flags.map(({ key }) => key)).toEqual([]);
  expect(aside).toEqual([]);
  for (const squad of squads) {
    expect(squad.clips.map(({ assignment }) => assignment.slot)).toEqual([...squad.squad.route.keys()]);
  }
  for (const { squad, sum } of score.squads) {
    const slots = plan.squads.find(({ code }) => code === squad)?.route.length ?? 0;
    expect({ squad, points: sum.points, max: sum.max }).toEqual({ squad, points: slots, max: slots });
  }
}
