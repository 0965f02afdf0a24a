import type { Command } from 'commander';
import type { Run } from './run.ts';
import type { Terminal } from './terminal.ts';

/** The commands between the tablets and the marks. */
export function addClipCommands(program: Command, terminal: Terminal, run: Run): void {
  program.commandsGroup('Bring in and mark:');
  program
    .command('stamps')
    .description('say when each clip was recorded, where that is written and how far to believe it')
    .argument('<paths...>', 'clips, or folders of clips; of any lesson or none')
    .option('--zone <zone>', 'the school’s time zone for dates that are local times, such as America/Halifax')
    .option('--json', 'print JSON: one object a file')
    .action(
      run(async (paths, options) =>
        (await import('./commands/stamps.ts')).runStamps(paths, options, terminal),
      ),
    );
  program
    .command('bring')
    .description(
      'copy clips into the lesson, each compared after copying; what is there already is passed over',
    )
    .argument('<lesson>', 'the lesson folder')
    .argument('<folders...>', 'a squad’s folder, a folder of squads’ folders, or a whole tablet')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, folders, options) =>
        (await import('./commands/bring.ts')).runBring([lesson, ...folders], options, terminal),
      ),
    );
  addWatching(program, terminal, run);
  addMark(program, terminal, run);
}

function addWatching(program: Command, terminal: Terminal, run: Run): void {
  program
    .command('evidence')
    .description('say what clips show: reps, unison, cards, place, camera; of any lesson or none')
    .argument('<clips...>', 'videos of any kind that ffmpeg reads, or folders of clips')
    .option('--rule <rule>', 'one rep a “cycle”, or one a “side”', 'cycle')
    .option('--tempo <min,max>', 'the movement’s usual length, shortest and longest, in seconds')
    .option('--performers <who>', 'how many are in each picture, 1 to 6, or where, such as 0.2,0.5,0.8')
    .option('--json', 'print JSON: one object a file')
    .action(
      run(async (paths, options) =>
        (await import('./commands/evidence.ts')).runEvidence(paths, options, terminal),
      ),
    );
  program
    .command('grade')
    .description('order each squad’s clips, hold them against its route, flag, propose and add up')
    .argument('<lesson>', 'the lesson folder')
    .option('--clips <folder>', 'read the clips where they lie, instead of “clips” in the lesson folder')
    .option('--watch', 'first watch every clip whole, to count reps and measure unison; takes minutes, once')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/grade.ts')).runGrade(lesson, options, terminal),
      ),
    );
}

function addMark(program: Command, terminal: Terminal, run: Run): void {
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
    .option(
      '--performers <who>',
      'how many are in the picture, 1 to 6, or where, such as 0.2,0.5,0.8; “back”',
    )
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
    .option('--by <name>', 'who decides; teacher unless told')
    .option('--second <name>', 'a second marking by this person, blind to the first; changes no mark')
    .option('--clips <folder>', 'where the clips lie, as for “grade”')
    .option('--json', 'print the recorded events as JSON')
    .action(
      run(async (lesson, options) => (await import('./commands/mark.ts')).runMark(lesson, options, terminal)),
    );
}
