import { listRepsScenes, REPS_FAMILIES } from '../../fixtures/sweep/reps-scenes.ts';
import { findReps } from '../../src-core/evidence/reps.ts';
import type { CountErrors } from './count-metrics.ts';
import { measureCounts } from './count-metrics.ts';
import { FOOTAGE, findFootage, readFileMotion } from './footage.ts';
import { countScene, summariseCounts } from './reps-sweep.ts';

type Print = (line: string) => void;

/** Prints how well reps are counted: on real footage where it is there, and on the filmed sweep. */
export async function benchReps(print: Print, sceneCount = 345, seed = 1): Promise<void> {
  await benchFootage(print);
  const counts = listRepsScenes(sceneCount, seed).map(countScene);
  for (const family of REPS_FAMILIES) {
    const own = summariseCounts(counts.filter(({ scene }) => scene.family === family));
    print(
      `  ${family.padEnd(12)} ${Number.isNaN(own.none) ? describeErrors(own) : `none ${own.none.toFixed(3)}`}`,
    );
  }
  const all = summariseCounts(counts);
  print(
    `reps, sweep of ${counts.length} scenes, seed ${seed}: ${describeErrors(all)}  none ${all.none.toFixed(3)}`,
  );
}

async function benchFootage(print: Print): Promise<void> {
  const clips = findFootage();
  if (clips === null) {
    print('reps, footage: left out, no ../shared/footage');
    return;
  }
  const pairs = [];
  for (const { file, count } of clips) {
    const {
      count: found,
      cycleSeconds,
      confidence,
    } = findReps(await readFileMotion(`${FOOTAGE}${file}`), {
      counting: 'cycle',
    });
    pairs.push({ found, truth: count });
    const cycle = cycleSeconds === null ? '' : `cycle ${cycleSeconds.toFixed(2)} s`;
    print(
      `  ${file.padEnd(26)} true ${count}  found ${found ?? 'none'}  ${cycle}  confidence ${confidence.toFixed(2)}`,
    );
  }
  print(`reps, footage of ${clips.length} clips: ${describeErrors(measureCounts(pairs))}`);
}

function describeErrors({ mae, obo, exact }: CountErrors): string {
  return `MAE ${mae.toFixed(3)}  OBO ${obo.toFixed(3)}  exact ${exact.toFixed(3)}`;
}

// On its own: tsx tests/bench/reps.ts [scenes] [seed]
if (process.argv[1] === import.meta.filename) {
  const [sceneCount = '345', seed = '1'] = process.argv.slice(2);
  await benchReps((line) => process.stdout.write(`${line}\n`), Number(sceneCount), Number(seed));
}
