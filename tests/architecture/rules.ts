// The rules of the house as data: where code may live, what it may be called, and what may import what.
// The tests beside this file hold the whole tree to them; DEVELOPERS.md explains them.

/** The folders of the tree that hold code, and what each may import. */
export interface Area {
  /** Folder from the top of the repository; a file belongs to the longest one that holds it. */
  readonly folder: string;
  /** Areas whose values may be imported (its own are always allowed). */
  readonly values: readonly string[];
  /** Areas whose zod schemas alone may be imported as values: names that end in `Schema`. */
  readonly schemas?: readonly string[];
  /** Areas whose types may be imported beside those of `values` and `schemas`. */
  readonly types: readonly string[];
  /** Whether it may use Node's own modules. */
  readonly node: boolean;
  /** Packages it may import; `any` where the area is free to choose. */
  readonly packages: readonly string[] | 'any';
}

/** Packages that compute on data alone: no files, no clock, no network. */
export const PURE_PACKAGES = ['exifr', 'papaparse', 'qrcode', 'temporal-polyfill', 'zod'];

const STAGES = [
  'platform',
  'lesson',
  'media',
  'signal',
  'intake',
  'evidence',
  'matching',
  'marking',
  'gradebook',
  'printing',
  'lesson-file',
  'contract',
  'app',
  'host',
  'cli',
] as const;

type Stage = (typeof STAGES)[number];

/** The last pure stage: all up to it run anywhere. */
const LAST_PURE = STAGES.indexOf('app');

function inCore(...stages: readonly Stage[]): string[] {
  return stages.map((stage) => `src-core/${stage}`);
}

function before(stage: Stage): string[] {
  return inCore(...STAGES.slice(0, STAGES.indexOf(stage)));
}

/** What each stage of the core may import as values; the types of every earlier stage come with it. */
const STAGE_VALUES: Readonly<Record<Stage, readonly Stage[]>> = {
  platform: [],
  lesson: ['platform'],
  media: ['platform'],
  signal: ['platform'],
  intake: ['platform', 'lesson', 'media'],
  evidence: ['platform', 'lesson', 'signal'],
  matching: ['platform', 'lesson'],
  marking: ['platform', 'lesson'],
  gradebook: ['platform', 'lesson'],
  printing: ['platform', 'lesson'],
  'lesson-file': ['platform'],
  contract: ['platform'],
  app: STAGES.slice(0, LAST_PURE),
  host: ['platform', 'media', 'signal', 'evidence', 'contract', 'app'],
  cli: ['lesson', 'marking', 'app', 'contract', 'host'],
};

/** Stages that may read other stages' zod schemas, to check what comes from a file or a face. */
const SCHEMA_READERS: readonly Stage[] = ['lesson-file', 'contract'];

/** The catalogue of words, which paper and the command line share with the page, and the demo that is filmed. */
const BESIDE_THE_CORE: Partial<Record<Stage, readonly string[]>> = {
  host: ['renderer/text'],
  cli: ['renderer/text', 'fixtures'],
};

const coreAreas = STAGES.map((stage, at): Area => {
  const isPure = at <= LAST_PURE;
  return {
    folder: `src-core/${stage}`,
    values: [...inCore(...STAGE_VALUES[stage]), ...(BESIDE_THE_CORE[stage] ?? [])],
    ...(SCHEMA_READERS.includes(stage) && { schemas: before(stage) }),
    types: before(stage),
    node: !isPure,
    packages: isPure ? PURE_PACKAGES : 'any',
  };
});

const pureCore = before('host');

/** The pure functions that the page may call directly, so that it need not ask for what it can compute. */
const rendererCore = inCore('contract', 'platform', 'lesson', 'matching', 'marking', 'gradebook');

const rendererParts = ['client', 'storage', 'ui', 'text'].map((part) => `renderer/${part}`);

/** The page's screens; only the page itself, which shows one at a time, may use them. */
const rendererFeatures = [
  'start',
  'plan',
  'bring-in',
  'line-up',
  'review',
  'scores',
  'hand-in',
  'class-clock',
  'look-back',
].map((step) => `renderer/features/${step}`);

const rendererAreas = ['renderer', ...rendererParts].map(
  (folder): Area => ({
    folder,
    values: [...rendererCore, ...rendererParts, ...(folder === 'renderer' ? rendererFeatures : [])],
    types: pureCore,
    node: false,
    packages: folder === 'renderer/text' ? PURE_PACKAGES : 'any',
  }),
);

/** Every area of the tree. A feature of the page is an area of its own, so that no feature leans on another. */
export const AREAS: readonly Area[] = [
  ...coreAreas,
  ...rendererAreas,
  ...rendererFeatures.map(
    (folder): Area => ({ ...getRendererArea(), folder, values: [...rendererCore, ...rendererParts] }),
  ),
  { ...getRendererArea(), folder: 'renderer/features/*', values: [...rendererCore, ...rendererParts] },
  {
    folder: 'electron',
    values: [...inCore('app', 'contract', 'host', 'platform'), 'fixtures', 'renderer/text'],
    types: before('host'),
    node: true,
    packages: 'any',
  },
  {
    folder: 'fixtures',
    values: inCore('platform', 'lesson', 'host'),
    types: [...pureCore, ...inCore('host')],
    node: true,
    packages: 'any',
  },
  {
    folder: 'tests',
    values: [
      ...inCore(...STAGES),
      ...rendererParts,
      ...rendererFeatures,
      'renderer',
      'electron',
      'fixtures',
      'scripts',
    ],
    types: [],
    node: true,
    packages: 'any',
  },
  { folder: 'scripts', values: [], types: [], node: true, packages: [] },
];

function getRendererArea(): Area {
  const [page] = rendererAreas;
  if (!page) throw new Error('the page is an area');
  return page;
}

/** Packages that one file alone may import, so that they can be replaced in one place. */
export const SOLE_USERS: Readonly<Record<string, string>> = {
  bullmq: 'src-core/host/queue/job-store.ts',
  'fluent-ffmpeg': 'src-core/host/ffmpeg.ts',
  fontkit: 'src-core/host/pdf/paper-fonts.ts',
  ioredis: 'src-core/host/queue/job-store.ts',
  pdfkit: 'src-core/host/pdf/draw-pages.ts',
  'zxing-wasm': 'src-core/host/card-reader.ts',
};

/** All that may stand at the top of the repository. */
export const TOP_LEVEL = [
  '.ci',
  '.gitignore',
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'biome.json',
  'electron',
  'fixtures',
  'package-lock.json',
  'package.json',
  'renderer',
  'scripts',
  'src-core',
  'tests',
  'tsconfig.json',
];

/** What a clone may hold beside its tracked files; see .gitignore. */
export const UNTRACKED = ['.git', '.cache', 'demo-lesson', 'dist', 'node_modules'];

/** Names that say nothing of what is inside. */
export const EMPTY_NAMES = ['common', 'helper', 'helpers', 'manager', 'misc', 'shared', 'util', 'utils'];

/** File and folder names in code folders: kebab-case, with a few dotted endings. */
export const NAME_PATTERN =
  /^[a-z0-9]+(-[a-z0-9]+)*(\.(window\.test|test|config|bench|base|d))?(\.[a-z0-9]+)?$/;

/** The longest a code file may grow, in lines. */
export const MAX_FILE_LINES = 300;

/** The longest a React component's file may grow, in lines. */
export const MAX_COMPONENT_LINES = 150;

/** Words a docblock must hold, so that it says more than the name does. */
export const MIN_DOCBLOCK_WORDS = 5;

/** Folders whose every export carries a docblock. */
export const DOCUMENTED_FOLDERS = ['src-core', 'renderer', 'fixtures'];

/** Calls that bring in a clock, chance or the outside: pure stages are handed these as arguments. */
export const IMPURE_CALLS = [
  'Date.now',
  'Math.random',
  'Temporal.Now',
  'crypto',
  'fetch',
  'globalThis',
  'performance',
  'queueMicrotask',
  'setInterval',
  'setTimeout',
];
