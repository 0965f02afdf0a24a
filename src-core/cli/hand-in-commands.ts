import type { Command } from 'commander';
import { EXPORT_WORDS } from './export-words.ts';
import type { Run } from './run.ts';
import type { Terminal } from './terminal.ts';

/** The commands with which marks leave the desk, and with which they are weighed. */
export function addHandInCommands(program: Command, terminal: Terminal, run: Run): void {
  program.commandsGroup('Hand in:');
  addExport(program, terminal, run);
  program
    .command('slips')
    .description('what each squad or pupil did well and can do next, in plain words, from what was confirmed')
    .argument('<lesson>', 'the lesson folder')
    .option('--of <kind>', 'squads or pupils', 'squads')
    .option('--pupil <id>', 'one pupil’s alone')
    .option('--out <file>', 'as a PDF, x.pdf: a page a squad, or several pupils’ a page to be cut apart')
    .option('--replace', 'write over a file of that name')
    .option('--paper <paper>', 'a4 or letter', 'a4')
    .option('--grey', 'without colours')
    .option('--clips <folder>', 'where the clips lie, as for “grade”')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/slips.ts')).runSlips(lesson, options, terminal),
      ),
    );
  program
    .command('agree')
    .description(
      'how far a second marking agrees with the first, criterion by criterion, and what to talk about',
    )
    .argument('<lesson>', 'the lesson folder')
    .option('--second <name>', 'one second marker; all of them unless told')
    .option('--clips <folder>', 'where the clips lie, as for “grade”')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/agree.ts')).runAgree(lesson, options, terminal),
      ),
    );
  program
    .command('validate')
    .description(
      'hold a set of OneRoster files, 1.1 or 1.2, to every rule of the standard that is known here',
    )
    .argument('<set>', 'a zip archive or a folder; ours or anybody’s')
    .option('--json', 'print JSON')
    .action(
      run(async (set, options) =>
        (await import('./commands/validate.ts')).runValidate(set, options, terminal),
      ),
    );
}

function addExport(program: Command, terminal: Terminal, run: Run): void {
  program
    .command('export')
    .description('write the grade sheet; refused while a flag is open')
    .argument('<lesson>', 'the lesson folder')
    .option('--to <kind>', `kind of sheet: ${EXPORT_WORDS.join(', ')}`, 'csv')
    .requiredOption('--out <file>', 'where to write it')
    .option('--replace', 'write over what is there')
    .option('--columns <list>', 'such as "Student ID=pupil,Score=points", instead of the plan’s columns')
    .option('--with-open-flags', 'write all the same; the sheet says that it is not final')
    .optionsGroup('With --to pdf, a class page and a page a squad to be signed:')
    .option('--paper <paper>', 'a4 or letter')
    .option('--grey', 'without colours')
    .option(
      '--stills <look>',
      'shown, blurred or left-out; a squad with somebody on the do-not-film list has none',
    )
    .optionsGroup('With --to oneroster or oneroster-1.1 (--out is a .zip, or a folder):')
    .option('--school <set>', 'the school’s own OneRoster set, which the roster’s ids come from')
    .option('--class <id>', 'which of its classes, where several hold the pupils')
    .option('--category <id>', 'which of its categories the marks belong to')
    .optionsGroup('Always:')
    .option('--clips <folder>', 'where the clips lie, as for “grade”')
    .option('--by <name>', 'who hands in', 'teacher')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/export.ts')).runExport(lesson, options, terminal),
      ),
    );
}
