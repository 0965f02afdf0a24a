import { describeProblem } from '../../../renderer/text/english/problems.ts';
import { parsePerformers } from '../../app/parse-performers.ts';
import { selectClips } from '../../app/read-stamps.ts';
import type { CountingRule } from '../../evidence/reps-finding.ts';
import type { UnisonFinding } from '../../evidence/unison-finding.ts';
import { type FileEvidence, readEvidence } from '../../host/read-evidence.ts';
import { findFiles } from '../../host/stamp-ports.ts';
import { PERFORMERS_FORM } from '../decision.ts';
import { formatJson, getExitCode, PLAIN_NAMES, sayProblems, toJsonProblem } from '../say.ts';
import { formatTable } from '../table.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `evidence` as typed. */
export interface EvidenceOptions {
  readonly json?: boolean;
  /** How cycles become reps. */
  readonly rule?: string;
  /** `min,max`: shortest and longest usual cycle, in seconds. */
  readonly tempo?: string;
  /** How many performers each picture shows, or where they are. */
  readonly performers?: string;
}

/** The plan's own default, for clips of no plan. */
const TOLERANCE_SECONDS = 0.35;

/** `evidence <clips…>`: what the pictures of each clip show, of any lesson or none. */
export async function runEvidence(
  paths: readonly string[],
  options: EvidenceOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const counting = parseRule(options.rule ?? 'cycle');
  const cycleSeconds = options.tempo === undefined ? null : parseTempo(options.tempo);
  const lanes = options.performers === undefined ? null : (parsePerformers(options.performers) ?? undefined);
  if (counting === null || cycleSeconds === undefined || lanes === undefined) {
    terminal.say(`${explainOption({ counting, cycleSeconds })}\n`);
    return 2;
  }
  const { named, found, problems } = await findFiles(paths);
  const files = [...named, ...selectClips(found)].map(({ path }) => path);
  if (files.length === 0 && problems.length === 0) {
    terminal.say('There is no clip in what was named.\n');
    return 2;
  }
  const evidence = await readEvidence(files, {
    movement: { reps: { counting, cycleSeconds }, unison: { lanes, toleranceSeconds: TOLERANCE_SECONDS } },
    signal: terminal.signal,
    onDone: (done) => terminal.job.onProgress({ step: 'watch', done, total: files.length }),
  });
  terminal.signal.throwIfAborted();
  terminal.write(
    options.json ? formatJson(evidence.map(buildEntry)) : formatTable(evidence.flatMap(buildRows)),
  );
  sayProblems(terminal, problems, PLAIN_NAMES);
  if (files.length === 0 && problems.length > 0) return 2;
  return getExitCode([...problems, ...evidence.flatMap((one) => one.problems)]);
}

/** What to type instead of the first option that cannot be read. */
function explainOption({
  counting,
  cycleSeconds,
}: {
  readonly counting: CountingRule | null;
  readonly cycleSeconds: object | null | undefined;
}): string {
  if (counting === null) return 'The rule is “cycle” or “side”.';
  return cycleSeconds === undefined
    ? 'A tempo is two lengths in seconds, the shorter one first, such as 1.5,4.'
    : PERFORMERS_FORM;
}

function parseRule(text: string): CountingRule | null {
  return text === 'cycle' || text === 'side' ? text : null;
}

/** Undefined: not a tempo. */
function parseTempo(text: string): readonly [number, number] | undefined {
  const [shortest = 0, longest = 0, ...more] = text.split(',').map(Number);
  return shortest > 0 && longest >= shortest && more.length === 0 ? [shortest, longest] : undefined;
}

function buildEntry({ file, movement, look, problems, milliseconds, cpuMilliseconds }: FileEvidence): object {
  const reps = movement?.reps;
  const unison = movement?.unison ?? null;
  return {
    file,
    durationSeconds: look?.look.durationSeconds ?? null,
    reps: {
      count: reps?.count ?? null,
      confidence: reps ? round(reps.confidence) : 0,
      timesSeconds: (reps?.timesSeconds ?? []).map(round),
      cycleSeconds: reps?.cycleSeconds == null ? null : round(reps.cycleSeconds),
      spanSeconds: reps?.spanSeconds ? reps.spanSeconds.map(round) : null,
    },
    unison: unison && buildUnison(unison),
    cards: look?.readings ?? [],
    place: look?.look.place ?? null,
    camera: movement && { widthsPerSecond: round(movement.camera.widthsPerSecond) },
    problems: problems.map((problem) => toJsonProblem(problem, PLAIN_NAMES)),
    milliseconds,
    cpuMilliseconds,
  };
}

function buildUnison({ score, lanes, alternating, together }: UnisonFinding): object {
  return {
    score: round(score),
    lanes: lanes.map(({ x, lagSeconds, reps }) => ({ x: round(x), lagSeconds: round(lagSeconds), reps })),
    alternating,
    together,
  };
}

function buildRows({ file, movement, look, problems }: FileEvidence): string[][] {
  const reps = movement?.reps;
  const unison = movement?.unison;
  const cards = [...new Set((look?.readings ?? []).map(({ text }) => text))];
  const counted = reps?.count == null ? 'no reps' : `${reps.count} reps`;
  const tempo = reps?.cycleSeconds == null ? '' : `every ${reps.cycleSeconds.toFixed(2)} s`;
  const lanes = unison ? `${unison.lanes.length} lanes, unison ${unison.score.toFixed(2)}` : '';
  return [
    [file, counted, tempo, lanes, cards.join(' ')],
    ...problems.map((problem) => ['', '', '', '', `! ${describeProblem(problem, PLAIN_NAMES).what}`]),
  ];
}

/** To the thousandth: finer than any picture. */
function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}
