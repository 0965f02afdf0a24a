// Prints the figures of unison over the filmed sweep: tsx tests/bench/unison.ts [scenes] [seed]
import { listUnisonScenes } from '../../fixtures/sweep/unison-scenes.ts';
import { measureScene, readSceneMotion, type SceneResult, summariseSweep } from './unison-sweep.ts';

const [count = '320', seed = '1'] = process.argv.slice(2);
const scenes = listUnisonScenes(Number(count), Number(seed));
const motions = scenes.map(readSceneMotion);
const print = (line: string) => process.stdout.write(`${line}\n`);
const exercises = [...new Set(scenes.map(({ script }) => script.movement?.exercise ?? 'idle'))].sort();

for (const reps of ['true', 'found'] as const) {
  for (const lanes of ['given', 'estimated'] as const) {
    const results = scenes.flatMap((scene, index) => {
      const motion = motions[index];
      return motion ? [measureScene(scene, motion, { reps, lanes })] : [];
    });
    print(`\nreps ${reps}, lanes ${lanes}`);
    printFigures('all', results);
    for (const exercise of exercises) {
      printFigures(
        exercise,
        results.filter(({ scene }) => (scene.script.movement?.exercise ?? 'idle') === exercise),
      );
    }
    printFigures(
      'upright',
      results.filter(({ scene }) => scene.script.height > scene.script.width),
    );
  }
}

function printFigures(name: string, results: readonly SceneResult[]): void {
  const figures = summariseSweep(results);
  const text = Object.entries(figures).map(([key, value]) => `${key} ${Number(value.toFixed(3))}`);
  print(`  ${name.padEnd(12)} ${text.join('  ')}`);
}
