/** Scenes of a sweep: so many of each seed. */
export interface SeededScenes {
  readonly sceneCount: number;
  readonly seeds: readonly number[];
}

/** Names seeds, and says whether any of them is among those that thresholds were set on. */
export function nameSeeds(seeds: readonly number[], setOn: readonly number[]): string {
  const held = seeds.some((seed) => setOn.includes(seed)) ? 'set on' : 'held out';
  return `seeds ${seeds.join(', ')} (${held})`;
}

/** Reads `[scenes] [seeds…]` of a command line; what is not said is as usual. */
export function readSeededScenes(words: readonly string[], usual: SeededScenes): SeededScenes {
  const [sceneCount = usual.sceneCount, ...seeds] = words.map(Number);
  return { sceneCount, seeds: seeds.length > 0 ? seeds : usual.seeds };
}
