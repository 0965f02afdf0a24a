import { availableParallelism, cpus } from 'node:os';
import { benchCards } from './cards.ts';
import { benchCost } from './cost.ts';
import { benchGrade } from './grade.ts';
import { benchLineUp } from './line-up-frames.ts';
import { benchReview } from './review-keys.ts';
import { benchStamps } from './stamps.ts';

const print = (line: string) => process.stdout.write(`${line}\n`);

print(`${cpus()[0]?.model ?? 'unknown processor'}, ${availableParallelism()} cores, Node ${process.version}`);
await benchStamps(print);
await benchGrade(print);
await benchCards(print);
await benchCost(print);
await benchLineUp(print);
await benchReview(print);
