import { listUnisonScenes } from '../../fixtures/sweep/unison-scenes.ts';
import type { BenchReport } from './report.ts';
import { measureScene, readSceneMotion, summariseSweep } from './unison-sweep.ts';

const SCENES = 160;

/**
 * Prints how well groups are measured over the filmed sweep: lanes estimated and lanes given, with the beats found by the
 * program itself and with the true ones.
 */
export async function benchUnison(
  { print, hold }: BenchReport,
  sceneCount = SCENES,
  seed = 1,
): Promise<void> {
  const scenes = listUnisonScenes(sceneCount, seed);
  const motions = scenes.map(readSceneMotion);
  for (const reps of ['found', 'true'] as const) {
    for (const lanes of ['estimated', 'given'] as const) {
      const results = scenes.flatMap((scene, at) => {
        const motion = motions[at];
        return motion ? [measureScene(scene, motion, { reps, lanes })] : [];
      });
      const figures = summariseSweep(results);
      const way = `unison, reps ${reps}, lanes ${lanes}`;
      const text = Object.entries(figures).map(([key, value]) => `${key} ${Number(value.toFixed(3))}`);
      print(`${way}: ${text.join(', ')}`);
      hold({ what: `${way}: lag error, median, s`, figure: figures.lagMedian, bar: ['at most', 0.08] });
      hold({ what: `${way}: lag error, 95 %, s`, figure: figures.lagMost, bar: ['at most', 0.15] });
      hold({
        what: `${way}: together or not, right`,
        figure: figures.togetherRight,
        bar: ['at least', 0.95],
      });
      hold({
        what: `${way}: score of four by chance, median`,
        figure: figures.chanceMedian,
        bar: ['at most', 0.1],
      });
      hold({
        what: `${way}: groups by chance, rescaled after averaging, beyond what was written`,
        figure: Math.abs(figures.chanceAfterwards - figures.chanceWritten),
        bar: ['at most', 0.1],
      });
      hold({ what: `${way}: by turns, named so`, figure: figures.alternatingSeen, bar: ['at least', 0.9] });
      hold({
        what: `${way}: not by turns, named so`,
        figure: figures.alternatingFalse,
        bar: ['at most', 0.02],
      });
      hold({ what: `${way}: lanes' reps, exact`, figure: figures.repsExact, bar: ['at least', 0.9] });
      hold({ what: `${way}: number of lanes, right`, figure: figures.lanesRight, bar: ['at least', 0.9] });
    }
  }
}
