import { Command, CommanderError } from 'commander';
import { stepWords } from '../../renderer/text/english/steps.ts';
import { runAgree } from './commands/agree.ts';
import { runBring } from './commands/bring.ts';
import { runCheck } from './commands/check.ts';
import { runDelete } from './commands/delete.ts';
import { runDemo } from './commands/demo.ts';
import { runDesk } from './commands/desk.ts';
import { runEvidence } from './commands/evidence.ts';
import { runExport } from './commands/export.ts';
import { runGrade } from './commands/grade.ts';
import { runKeep } from './commands/keep.ts';
import { runMark } from './commands/mark.ts';
import { runPrint } from './commands/print.ts';
import { runPupil } from './commands/pupil.ts';
import { runSlips } from './commands/slips.ts';
import { runStamps } from './commands/stamps.ts';
import { runTablet } from './commands/tablet.ts';
import { runValidate } from './commands/validate.ts';
import { addDepartmentCommands } from './department-commands.ts';
import { EXPORT_KINDS } from './export-kinds.ts';
import { addKeepingCommands } from './keeping-commands.ts';
import { addPlanningCommands } from './planning-commands.ts';
import { type ExitCode, openTerminal } from './terminal.ts';

const FOOT = `
Exit codes: 0 done, 1 done but something needs a look, 2 could not be done.
Results go to the standard output, everything else to the error stream. Nothing leaves this machine, but paths
and hashes to a queue of your own where you name one.

Exercise and pupils' video ask for care: follow your school's policy and local law on filming, consent and
keeping, and your local code of safe practice. Medical questions go to licensed staff.`;

const terminal = openTerminal(stepWords);
let exitCode: ExitCode = 0;

/** Lets a command run and remembers how it ended. */
function run<Input extends unknown[]>(work: (...input: Input) => Promise<ExitCode>) {
  return async (...input: Input) => {
    exitCode = await work(...input);
  };
}

const program = new Command('routemark')
  .description('From squads’ clips of a station circuit to fair, checked marks.')
  .addHelpText('after', FOOT)
  .exitOverride()
  .showHelpAfterError('(add --help for more)');

program
  .command('demo')
  .description('film the demo lesson, grade it, decide as its teacher does, and write its grade sheets')
  .option('--into <folder>', 'where to put the lesson', 'demo-lesson')
  .option('--json', 'print the graded lesson as JSON')
  .action(run((options) => runDemo(options, terminal)));

program
  .command('desk')
  .description('open the window, in a browser of this machine; nothing leaves the machine')
  .argument('[lesson]', 'the lesson folder to open first')
  .option('--port <number>', 'port on 127.0.0.1, instead of the usual one; 0 takes any')
  .option('--no-open', 'print the address instead of opening a browser')
  .action(run((lesson, options) => runDesk(lesson, options, terminal)));

program
  .command('stamps')
  .description('say when each clip was recorded, where that is written and how far to believe it')
  .argument('<paths...>', 'clips, or folders of clips; of any lesson or none')
  .option('--zone <zone>', 'the school’s time zone for dates that are local times, such as America/Halifax')
  .option('--json', 'print JSON: one object a file')
  .action(run((paths, options) => runStamps(paths, options, terminal)));

program
  .command('check')
  .description('say whether plan.json and roster.csv are sound, before any clip is read')
  .argument('<lesson>', 'the lesson folder')
  .option('--json', 'print JSON')
  .action(run((lesson, options) => runCheck(lesson, options, terminal)));

addPlanningCommands(program, terminal, run);

program
  .command('print')
  .description('write the print pack: station and clue cards, squad sheets, the teacher’s keys and briefing')
  .argument('<lesson>', 'the lesson folder')
  .requiredOption('--out <place>', 'one file, x.pdf; or a folder, which gets a file for each part')
  .option('--paper <paper>', 'a4 or letter', 'a4')
  .option('--grey', 'without colours; pinnies go by pattern and name')
  .option(
    '--pages <parts>',
    'some of them, with commas between',
    'briefing,key,answers,cards,clues,squads,labels',
  )
  .option('--replace', 'put them in place of files of the same names')
  .option('--json', 'print JSON')
  .action(run((lesson, options) => runPrint(lesson, options, terminal)));

program
  .command('bring')
  .description(
    'copy clips into the lesson, each compared after copying; what is there already is passed over',
  )
  .argument('<lesson>', 'the lesson folder')
  .argument('<folders...>', 'a squad’s folder, a folder of squads’ folders, or a whole tablet')
  .option('--json', 'print JSON')
  .action(run((lesson, folders, options) => runBring([lesson, ...folders], options, terminal)));

program
  .command('evidence')
  .description('say what clips show: reps, unison, cards, place, camera; of any lesson or none')
  .argument('<clips...>', 'videos of any kind that ffmpeg reads, or folders of clips')
  .option('--rule <rule>', 'one rep a “cycle”, or one a “side”', 'cycle')
  .option('--tempo <min,max>', 'the movement’s usual length, shortest and longest, in seconds')
  .option('--performers <who>', 'how many are in each picture, 1 to 6, or where, such as 0.2,0.5,0.8')
  .option('--json', 'print JSON: one object a file')
  .action(run((paths, options) => runEvidence(paths, options, terminal)));

program
  .command('grade')
  .description('order each squad’s clips, hold them against its route, flag, propose and add up')
  .argument('<lesson>', 'the lesson folder')
  .option('--clips <folder>', 'read the clips where they lie, instead of “clips” in the lesson folder')
  .option('--watch', 'first watch every clip whole, to count reps and measure unison; takes minutes, once')
  .option('--json', 'print JSON')
  .action(run((lesson, options) => runGrade(lesson, options, terminal)));

addDepartmentCommands(program, terminal, run);

program
  .command('mark')
  .description('record the teacher’s decisions; each is safe on the disk before it is acknowledged')
  .argument('<lesson>', 'the lesson folder')
  .optionsGroup('About a clip:')
  .option('--clip <clip>', 'path below the folder of clips, file name, or id')
  .option('--station <code>', 'where it was filmed; “back” takes the word back')
  .option('--slot <number>', 'the slot it fills, from 1; “none” sets it aside; “back”')
  .option('--give-to <squad>', 'the squad that filmed it; “back”')
  .option('--met <criteria>', 'criteria met, with commas between')
  .option('--not-met <criteria>', 'criteria not met')
  .option('--undecided <criteria>', 'criteria open again')
  .option('--confirm', 'make every answer shown the teacher’s own')
  .option('--performers <who>', 'how many are in the picture, 1 to 6, or where, such as 0.2,0.5,0.8; “back”')
  .option('--note <words>', 'a note about it; “back” takes it away')
  .optionsGroup('About a flag:')
  .option('--flag <key>', 'as “grade” prints it')
  .option('--keep', 'it is as flagged')
  .option('--clear', 'it is not as flagged, or was allowed')
  .option('--reopen', 'open it again')
  .optionsGroup('About a squad:')
  .option('--squad <squad>', 'the squad’s code')
  .option('--earns <marks>', 'squad criteria, such as care=2,team=1')
  .option('--clock <span>', 'what its tablet’s clock lacks, such as 37:00, or -0:04 for a fast one; “back”')
  .optionsGroup('About a pupil:')
  .option('--pupil <id>', 'the roster’s id')
  .option('--attendance <word>', 'present, absent, excused or late; “back”')
  .option('--arrived <time>', 'with late: local time, such as 10:55')
  .optionsGroup('About points of a clip, squad or pupil:')
  .option('--points <change>', '+1, -1, or =2; “back”')
  .option('--reason <words>', 'why; needed for a change of points')
  .optionsGroup('Instead:')
  .option('--undo', 'take the latest decision back')
  .option('--redo', 'bring it into force again')
  .option('--list <file>', 'decisions as JSON, one a line; - reads the standard input')
  .option('--merge <file>', 'take over the decisions of another journal of this lesson')
  .optionsGroup('Always:')
  .option('--by <name>', 'who decides', 'teacher')
  .option('--second <name>', 'a second marking by this person, blind to the first; changes no mark')
  .option('--clips <folder>', 'where the clips lie, as for “grade”')
  .option('--json', 'print the recorded events as JSON')
  .action(run((lesson, options) => runMark(lesson, options, terminal)));

program
  .command('export')
  .description('write the grade sheet; refused while a flag is open')
  .argument('<lesson>', 'the lesson folder')
  .option('--to <kind>', `kind of sheet: ${[...EXPORT_KINDS.keys()].join(', ')}`, 'csv')
  .requiredOption('--out <file>', 'where to write it')
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
  .action(run((lesson, options) => runExport(lesson, options, terminal)));

program
  .command('slips')
  .description('what each squad or pupil did well and can do next, in plain words, from what was confirmed')
  .argument('<lesson>', 'the lesson folder')
  .option('--of <kind>', 'squads or pupils', 'squads')
  .option('--pupil <id>', 'one pupil’s alone')
  .option('--out <file>', 'as a PDF, x.pdf: a page a squad, or several pupils’ a page to be cut apart')
  .option('--paper <paper>', 'a4 or letter', 'a4')
  .option('--grey', 'without colours')
  .option('--clips <folder>', 'where the clips lie, as for “grade”')
  .option('--json', 'print JSON')
  .action(run((lesson, options) => runSlips(lesson, options, terminal)));

program
  .command('agree')
  .description(
    'how far a second marking agrees with the first, criterion by criterion, and what to talk about',
  )
  .argument('<lesson>', 'the lesson folder')
  .option('--second <name>', 'one second marker; all of them unless told')
  .option('--clips <folder>', 'where the clips lie, as for “grade”')
  .option('--json', 'print JSON')
  .action(run((lesson, options) => runAgree(lesson, options, terminal)));

program
  .command('pupil')
  .description('everything that is held on one pupil, without others’ names, and where it is kept')
  .argument('<lesson>', 'the lesson folder')
  .argument('<id>', 'the roster’s id')
  .option('--out <file>', 'where to write it, instead of the standard output')
  .option('--clips <folder>', 'where the clips lie, as for “grade”')
  .option('--json', 'print JSON')
  .action(run((lesson, id, options) => runPupil([lesson, id], options, terminal)));

program
  .command('keep')
  .description('how long lessons are kept, what they hold, and which are due; sets the last day')
  .argument('<lessons...>', 'lesson folders')
  .option('--until <day>', 'the last day, such as 2025-07-31')
  .option('--json', 'print JSON')
  .action(run((lessons, options) => runKeep(lessons, options, terminal)));

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
  .action(run((lesson, options) => runDelete(lesson, options, terminal)));

program
  .command('tablet')
  .description('what of a tablet is verified in the lesson and may be deleted there; deletes nothing')
  .argument('<lesson>', 'the lesson folder')
  .argument('<folder>', 'the tablet’s folder, or one copied from it')
  .option('--json', 'print JSON')
  .action(run((lesson, folder, options) => runTablet([lesson, folder], options, terminal)));

program
  .command('validate')
  .description('hold a set of OneRoster files, 1.1 or 1.2, to every rule of the standard that is known here')
  .argument('<set>', 'a zip archive or a folder; ours or anybody’s')
  .option('--json', 'print JSON')
  .action(run((set, options) => runValidate(set, options, terminal)));

addKeepingCommands(program, terminal, run);

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) exitCode = error.exitCode === 0 ? 0 : 2;
  else if (terminal.signal.aborted) {
    terminal.say('Stopped. What was recorded before is safe.\n');
    exitCode = 2;
  } else {
    // A fault of ours: the exit code must not read as done, and the place in the program is worth having.
    const place = error instanceof Error ? (error.stack ?? error.message) : String(error);
    terminal.say(`! Routemark itself failed. What was recorded before is safe.\n${place}\n`);
    exitCode = 2;
  }
}
process.exitCode = exitCode;
