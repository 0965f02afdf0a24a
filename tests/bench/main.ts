import { availableParallelism, cpus } from 'node:os';
import { benchGrade } from './grade.ts';
import { benchStamps } from './stamps.ts';

const print = (line: string) => process.stdout.write(`${line}\n`);

print(`${cpus()[0]?.model ?? 'unknown processor'}, ${availableParallelism()} cores, Node ${process.version}`);
await benchStamps(print);
await benchGrade(print);
