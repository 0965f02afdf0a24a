import type { Command } from 'commander';
import { runBackup } from './commands/backup.ts';
import { runLookBack } from './commands/look-back.ts';
import { runRestore } from './commands/restore.ts';
import type { Run } from './planning-commands.ts';
import type { Terminal } from './terminal.ts';

/** The commands for lessons as a whole, after they were taught: keep and move one, look back on many. */
export function addKeepingCommands(program: Command, terminal: Terminal, run: Run): void {
  program
    .command('look-back')
    .description('classes across lessons: points, reps, unison, flags and criteria, by squad; of no pupil')
    .argument('<folders...>', 'lesson folders, or folders that hold them')
    .option('--class <name>', 'this class alone')
    .option('--school <name>', 'this school alone')
    .option('--csv', 'print the figures as CSV: a row for each squad in each lesson')
    .option('--json', 'print JSON')
    .action(run((folders, options) => runLookBack(folders, options, terminal)));
  program
    .command('backup')
    .description('keep a lesson in one archive, read back and compared; to be moved, or restored from')
    .argument('<lesson>', 'the lesson folder')
    .argument('<archive>', 'the file to make, such as harbour.zip; nothing is written over')
    .option('--without-clips', 'plan, roster, decisions and evidence alone')
    .option('--json', 'print JSON')
    .action(run((lesson, archive, options) => runBackup([lesson, archive], options, terminal)));
  program
    .command('restore')
    .description('make a lesson folder of an archive; it appears once every file in it was checked')
    .argument('<archive>', 'what “backup” made')
    .argument('<folder>', 'the lesson folder to make: not there yet, or empty')
    .option('--whole-files', 'of a damaged archive, restore the files that are whole')
    .option('--json', 'print JSON')
    .action(run((archive, folder, options) => runRestore([archive, folder], options, terminal)));
}
