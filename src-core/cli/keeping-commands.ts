import type { Command } from 'commander';
import type { Run } from './run.ts';
import type { Terminal } from './terminal.ts';

/** The commands for lessons as a whole, after they were taught: keep and move one, look back on many. */
export function addKeepingCommands(program: Command, terminal: Terminal, run: Run): void {
  program.commandsGroup('Look after and look back:');
  program
    .command('look-back')
    .description('classes across lessons: points, reps, unison, flags and criteria, by squad; of no pupil')
    .argument('<folders...>', 'lesson folders, or folders that hold them')
    .option('--class <name>', 'this class alone')
    .option('--school <name>', 'this school alone')
    .option('--csv', 'print the figures as CSV: a row for each squad in each lesson')
    .option('--json', 'print JSON')
    .action(
      run(async (folders, options) =>
        (await import('./commands/look-back.ts')).runLookBack(folders, options, terminal),
      ),
    );
  program
    .command('pupil')
    .description('everything that is held on one pupil, without others’ names, and where it is kept')
    .argument('<lesson>', 'the lesson folder')
    .argument('<id>', 'the roster’s id')
    .option('--out <file>', 'where to write it, instead of the standard output')
    .option('--replace', 'write over a file of that name')
    .option('--clips <folder>', 'where the clips lie, as for “grade”')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, id, options) =>
        (await import('./commands/pupil.ts')).runPupil([lesson, id], options, terminal),
      ),
    );
  addKeeping(program, terminal, run);
  program
    .command('tablet')
    .description('what of a tablet is verified in the lesson and may be deleted there; deletes nothing')
    .argument('<lesson>', 'the lesson folder')
    .argument('<folder>', 'the tablet’s folder, or one copied from it')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, folder, options) =>
        (await import('./commands/tablet.ts')).runTablet([lesson, folder], options, terminal),
      ),
    );
  addArchives(program, terminal, run);
}

function addKeeping(program: Command, terminal: Terminal, run: Run): void {
  program
    .command('keep')
    .description('how long lessons are kept, what they hold, and which are due; sets the last day')
    .argument('<lessons...>', 'lesson folders')
    .option('--until <day>', 'the last day, such as 2025-07-31')
    .option('--json', 'print JSON')
    .action(
      run(async (lessons, options) =>
        (await import('./commands/keep.ts')).runKeep(lessons, options, terminal),
      ),
    );
  program
    .command('delete')
    .description(
      'show what a lesson holds and delete it once that list is confirmed; keeps a log without content',
    )
    .argument('<lesson>', 'the lesson folder')
    .option('--films', 'clips, stills and all that was read from them')
    .option('--all', 'everything of the lesson, marks and roster too')
    .option('--confirm <code>', 'the code that came with the list')
    .option('--by <name>', 'who deletes', 'teacher')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/delete.ts')).runDelete(lesson, options, terminal),
      ),
    );
}

function addArchives(program: Command, terminal: Terminal, run: Run): void {
  program
    .command('backup')
    .description('keep a lesson in one archive, read back and compared; to be moved, or restored from')
    .argument('<lesson>', 'the lesson folder')
    .argument('<archive>', 'the file to make, such as harbour.zip; nothing is written over')
    .option('--without-clips', 'plan, roster, decisions and evidence alone')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, archive, options) =>
        (await import('./commands/backup.ts')).runBackup([lesson, archive], options, terminal),
      ),
    );
  program
    .command('restore')
    .description('make a lesson folder of an archive; it appears once every file in it was checked')
    .argument('<archive>', 'what “backup” made')
    .argument('<folder>', 'the lesson folder to make: not there yet, or empty')
    .option('--whole-files', 'of a damaged archive, restore the files that are whole')
    .option('--json', 'print JSON')
    .action(
      run(async (archive, folder, options) =>
        (await import('./commands/restore.ts')).runRestore([archive, folder], options, terminal),
      ),
    );
}
