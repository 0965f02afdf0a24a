import { listUnisonScenes } from '../../fixtures/sweep/unison-scenes.ts';
import { type BenchReport, createBenchReport } from './report.ts';
import { measureScene, readSceneMotion, summariseSweep } from './unison-sweep.ts';

const SCENES = 160;

/** Nothing was set on it; what thresholds there are were set on seeds 1 and 3, the rule for homes on 5 and 6 besides. */
const HELD_OUT_SEED = 7;

/**
 * Prints how well groups are measured over the filmed sweep: lanes estimated and lanes given, with the beats found by the
 * program itself and with the true ones.
 */
export async function benchUnison(
  { print, hold }: BenchReport,
  sceneCount = SCENES,
  seed = HELD_OUT_SEED,
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
      const way = `unison, seed ${seed} (${seed === HELD_OUT_SEED ? 'held out' : 'set on'}), reps ${reps}, lanes ${lanes}`;
      const text = Object.entries(figures).map(([key, value]) => `${key} ${Number(value.toFixed(3))}`);
      print(`${way}: ${text.join(', ')}`);
      hold({
        what: `${way}: lag error where the number of lanes is right, median, s`,
        figure: figures.lagMedian,
        bar: ['at most', 0.08],
      });
      hold({
        what: `${way}: lag error where the number of lanes is right, 95 %, s`,
        figure: figures.lagMost,
        bar: ['at most', 0.15],
      });
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

// On its own: tsx tests/bench/unison.ts [scenes] [seed]
if (process.argv[1] === import.meta.filename) {
  const [sceneCount = SCENES, seed = HELD_OUT_SEED] = process.argv.slice(2).map(Number);
  const { report } = createBenchReport((line) => process.stdout.write(`${line}\n`));
  await benchUnison(report, sceneCount, seed);
}
