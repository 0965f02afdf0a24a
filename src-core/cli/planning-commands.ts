import type { Command } from 'commander';
import type { Run } from './run.ts';
import type { Terminal } from './terminal.ts';

/** The commands with which a lesson is planned; each only suggests, until it is told to save. */
export function addPlanningCommands(program: Command, terminal: Terminal, run: Run): void {
  program.commandsGroup('Plan and print:');
  const plan = program
    .command('plan')
    .description('plan a lesson: new, routes, squads, versions, compare, copy');
  addMaking(plan, terminal, run);
  addArranging(plan, terminal, run);
  addChecking(program, terminal, run);
  addLists(program, terminal, run);
}

function addArranging(plan: Command, terminal: Terminal, run: Run): void {
  plan
    .command('routes')
    .description('suggest routes on which no two squads meet')
    .argument('<lesson>', 'the lesson folder')
    .option('--design <design>', 'cyclic or balanced, instead of the plan’s')
    .option('--seed <number>', 'another draw, instead of the plan’s')
    .option('--save', 'write them into plan.json; what it said before is kept')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/plan-routes.ts')).runPlanRoutes(lesson, options, terminal),
      ),
    );
  plan
    .command('squads')
    .description('suggest squads from the roster, by the plan’s rules for together and apart')
    .argument('<lesson>', 'the lesson folder')
    .option('--count <number>', 'how many squads; as many as the plan has unless told')
    .option('--seed <number>', 'another draw, instead of the plan’s')
    .option('--save', 'write them into plan.json and roster.csv')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/plan-routes.ts')).runPlanSquads(lesson, options, terminal),
      ),
    );
  plan
    .command('copy')
    .description('copy a lesson for another day: plan, roster and photos, no clips, no marks')
    .argument('<lesson>', 'the lesson folder')
    .argument('<folder>', 'a folder that is not there yet')
    .requiredOption('--date <date>', 'the new lesson’s day')
    .option('--code <code>', 'a code of its own; otherwise the next printing of the cards')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, folder, options) =>
        (await import('./commands/plan-versions.ts')).runPlanCopy([lesson, folder], options, terminal),
      ),
    );
}

function addChecking(program: Command, terminal: Terminal, run: Run): void {
  program
    .command('check')
    .description('say whether plan.json and roster.csv are sound, before any clip is read')
    .argument('<lesson>', 'the lesson folder')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/check.ts')).runCheck(lesson, options, terminal),
      ),
    );
  program
    .command('walk')
    .description('walk a simulated class round and say where it would queue')
    .argument('<lesson>', 'the lesson folder')
    .option('--seed <number>', 'another class', '1')
    .option('--spread <share>', 'how much squads’ paces differ, 0 to 0.9', '0.2')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/plan-routes.ts')).runWalk(lesson, options, terminal),
      ),
    );
  program
    .command('print')
    .description(
      'write the print pack: station and clue cards, squad sheets, the teacher’s keys and briefing',
    )
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
    .action(
      run(async (lesson, options) =>
        (await import('./commands/print.ts')).runPrint(lesson, options, terminal),
      ),
    );
}

function addLists(program: Command, terminal: Terminal, run: Run): void {
  program
    .command('roster')
    .description('say what a class list would change in roster.csv: a CSV, or a OneRoster 1.1 or 1.2 export')
    .argument('<lesson>', 'the lesson folder')
    .argument('<list>', 'the CSV, the zip file or the folder of the export')
    .option('--columns <list>', 'such as "id=Student ID,given=First,family=Last"')
    .option('--class <id>', 'which class of the export')
    .option('--drop-left', 'take out who left, instead of keeping them with a mark')
    .option('--save', 'write roster.csv; its other columns stay')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, list, options) =>
        (await import('./commands/roster.ts')).runRoster([lesson, list], options, terminal),
      ),
    );
  program
    .command('exercises')
    .description('list the library of exercises')
    .option('--take <file>', 'take a library of your own over (exercises.json)')
    .option('--forget', 'do without your own again')
    .option('--json', 'print JSON')
    .action(
      run(async (options) => (await import('./commands/exercises.ts')).runExercises(options, terminal)),
    );
}

function addMaking(plan: Command, terminal: Terminal, run: Run): void {
  plan
    .command('new')
    .description('make a lesson folder with a plan to begin with')
    .argument('<folder>', 'a folder that is not there yet')
    .requiredOption('--title <words>', 'what the lesson is called')
    .requiredOption('--school <words>', 'the school')
    .requiredOption('--class <words>', 'the class')
    .requiredOption('--date <date>', 'such as 2025-05-15')
    .requiredOption('--zone <zone>', 'the school’s time zone, such as America/Halifax')
    .requiredOption('--period <times>', 'local times, such as 10:40-11:25')
    .requiredOption('--code <code>', 'stands on the cards: up to 12 capitals, digits or hyphens')
    .option('--json', 'print JSON')
    .action(
      run(async (folder, options) =>
        (await import('./commands/plan-versions.ts')).runPlanNew(folder, options, terminal),
      ),
    );
  plan
    .command('versions')
    .description('list the plan’s earlier states, newest first')
    .argument('<lesson>', 'the lesson folder')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/plan-versions.ts')).runPlanVersions(lesson, options, terminal),
      ),
    );
  plan
    .command('compare')
    .description('say what changed in the plan since an earlier state')
    .argument('<lesson>', 'the lesson folder')
    .option('--since <version>', 'as “plan versions” lists it; the newest unless told')
    .option('--json', 'print JSON')
    .action(
      run(async (lesson, options) =>
        (await import('./commands/plan-versions.ts')).runPlanCompare(lesson, options, terminal),
      ),
    );
}
