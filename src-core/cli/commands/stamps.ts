import { describeProblem } from '../../../renderer/text/english/problems.ts';
import { describeStampProblem, explainStamp, nameSource } from '../../../renderer/text/english/stamps.ts';
import { readStamps, type StampReading, selectClips } from '../../app/read-stamps.ts';
import { findFiles, openStampPorts } from '../../host/stamp-ports.ts';
import type { Stamp } from '../../intake/stamp.ts';
import { toOneLine } from '../one-line.ts';
import { formatJson, getExitCode, PLAIN_NAMES, sayProblems, toJsonProblem } from '../say.ts';
import { formatTable } from '../table.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `stamps` as typed. */
export interface StampsOptions {
  readonly json?: boolean;
  /** IANA zone for dates that are local times. */
  readonly zone?: string;
}

/** `stamps <paths…>`: when each file says it was recorded, and how far to believe it. */
export async function runStamps(
  paths: readonly string[],
  options: StampsOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const { zone = null } = options;
  if (zone !== null && !isZone(zone)) {
    terminal.say(`! There is no time zone “${toOneLine(zone)}”. Write it as in America/Halifax.\n`);
    return 2;
  }
  const { named, found, problems } = await findFiles(paths);
  const files = [...named, ...selectClips(found)];
  const readings = await readStamps(files, openStampPorts(zone), terminal.job);
  const all = [...problems, ...readings.flatMap((reading) => reading.problems)];
  terminal.write(
    options.json ? formatJson(readings.map(buildEntry)) : formatTable(readings.flatMap(buildRows)),
  );
  sayProblems(terminal, problems, PLAIN_NAMES);
  if (readings.length === 0 && problems.length > 0) return 2;
  return getExitCode(all);
}

function isZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }) !== null;
  } catch {
    return false;
  }
}

function buildEntry({ file, stamp, facts, problems }: StampReading): object {
  return {
    file: file.path,
    read: formatInstant(stamp.readMs),
    local: stamp.local,
    source: stamp.source,
    meaning: stamp.meaning,
    start: formatInstant(stamp.startMs),
    uncertaintySeconds: Number.isFinite(stamp.uncertaintySeconds) ? stamp.uncertaintySeconds : null,
    trust: stamp.trust,
    why: explainStamp(stamp),
    durationSeconds: facts?.durationSeconds ?? null,
    container: facts?.container ?? null,
    codec: facts?.codec ?? null,
    problems: [
      ...problems.map((problem) => toJsonProblem(problem, PLAIN_NAMES)),
      ...stamp.problems.map((problem) => ({ ...problem, what: describeStampProblem(problem) })),
    ],
  };
}

function buildRows({ file, stamp, problems }: StampReading): string[][] {
  const start = formatInstant(stamp.startMs)?.replace(/\.000Z$/, 'Z') ?? stamp.local ?? 'no date';
  const remarks = [
    ...problems.map((problem) => describeProblem(problem, PLAIN_NAMES).what),
    ...stamp.problems.map(describeStampProblem),
  ];
  return [
    [file.path, start, formatDoubt(stamp), stamp.trust, nameSource(stamp.source), explainStamp(stamp)],
    ...remarks.map((remark) => ['', '', '', '', '', `! ${remark}`]),
  ];
}

function formatDoubt({ uncertaintySeconds }: Stamp): string {
  return Number.isFinite(uncertaintySeconds) ? `±${Number(uncertaintySeconds.toFixed(1))} s` : '±?';
}

function formatInstant(ms: number | null): string | null {
  return ms === null ? null : new Date(ms).toISOString();
}
