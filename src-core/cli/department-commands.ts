import type { Command } from 'commander';
import type { Run } from './run.ts';
import type { Terminal } from './terminal.ts';

/** The commands of a school that watches the clips of many lessons in one place. */
export function addDepartmentCommands(program: Command, terminal: Terminal, run: Run): void {
  program.commandsGroup('For a school that watches centrally:');
  program
    .command('watch')
    .description('watch every clip of many lessons ahead of time; marks nothing, and does nothing twice')
    .argument('<folders...>', 'lesson folders, or folders with lessons in them')
    .option('--queue <address>', 'hand the clips to workers over this Redis, such as redis://127.0.0.1:6379')
    .option('--json', 'print JSON')
    .action(
      run(async (folders, options) =>
        (await import('./commands/watch.ts')).runWatch(folders, options, terminal),
      ),
    );
  program
    .command('work')
    .description('be a worker: watch clips that “watch --queue” hands out, until stopped')
    .argument('<folders...>', 'where the lessons lie; nothing outside is touched')
    .requiredOption(
      '--queue <address>',
      'the same Redis; paths and hashes go over it, no picture and no name',
    )
    .option('--json', 'print JSON at the end')
    .action(
      run(async (folders, options) =>
        (await import('./commands/work.ts')).runWork(folders, options, terminal),
      ),
    );
}
