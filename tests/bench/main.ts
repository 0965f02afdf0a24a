// All benches, or those named: tsx tests/bench/main.ts [stamps grade cards card-damage cost memory unison reps
// footage-changed line-up review look-back]
import { availableParallelism, cpus } from 'node:os';
import { benchCardDamage } from './card-damage.ts';
import { benchCards } from './cards.ts';
import { benchCost } from './cost.ts';
import { benchChangedFootage } from './footage-changed.ts';
import { benchGrade } from './grade.ts';
import { benchLineUp } from './line-up-frames.ts';
import { benchLookBack } from './look-back.ts';
import { benchMemory } from './memory.ts';
import { type BenchReport, createBenchReport } from './report.ts';
import { benchReps } from './reps.ts';
import { benchReview } from './review-keys.ts';
import { benchStamps } from './stamps.ts';
import { benchUnison } from './unison.ts';

const PARTS: Readonly<Record<string, (report: BenchReport) => Promise<void>>> = {
  stamps: ({ print }) => benchStamps(print),
  grade: ({ print }) => benchGrade(print),
  cards: benchCards,
  'card-damage': benchCardDamage,
  cost: benchCost,
  memory: benchMemory,
  unison: (report) => benchUnison(report),
  reps: (report) => benchReps(report),
  'footage-changed': benchChangedFootage,
  'line-up': benchLineUp,
  review: benchReview,
  'look-back': benchLookBack,
};

const print = (line: string) => process.stdout.write(`${line}\n`);
const named = process.argv.slice(2);
const unknown = named.find((name) => !(name in PARTS));
if (unknown !== undefined)
  throw new Error(`no bench “${unknown}”; there are ${Object.keys(PARTS).join(', ')}`);

const { report, printTable } = createBenchReport(print);
for (const [name, bench] of Object.entries(PARTS)) {
  if (named.length === 0 || named.includes(name)) await bench(report);
}
const [processor] = cpus();
print(
  `\n${processor?.model ?? 'unknown processor'}, ${availableParallelism()} cores, Node ${process.version}, ` +
    new Date().toISOString().slice(0, 10),
);
printTable();
