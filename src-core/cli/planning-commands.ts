import type { Command } from 'commander';
import { runExercises } from './commands/exercises.ts';
import { runPlanRoutes, runPlanSquads, runWalk } from './commands/plan-routes.ts';
import { runPlanCompare, runPlanCopy, runPlanNew, runPlanVersions } from './commands/plan-versions.ts';
import { runRoster } from './commands/roster.ts';
import type { ExitCode, Terminal } from './terminal.ts';

/** Lets a command run, and keeps how it ended for the program's own end. */
export type Run = <Input extends unknown[]>(
  work: (...input: Input) => Promise<ExitCode>,
) => (...input: Input) => Promise<void>;

/** The commands with which a lesson is planned; each only suggests, until it is told to save. */
export function addPlanningCommands(program: Command, terminal: Terminal, run: Run): void {
  const plan = program
    .command('plan')
    .description('plan a lesson: new, routes, squads, versions, compare, copy');
  addMaking(plan, terminal, run);
  plan
    .command('routes')
    .description('suggest routes on which no two squads meet')
    .argument('<lesson>', 'the lesson folder')
    .option('--design <design>', 'cyclic or balanced, instead of the plan’s')
    .option('--seed <number>', 'another draw, instead of the plan’s')
    .option('--save', 'write them into plan.json; what it said before is kept')
    .option('--json', 'print JSON')
    .action(run((lesson, options) => runPlanRoutes(lesson, options, terminal)));
  plan
    .command('squads')
    .description('suggest squads from the roster, by the plan’s rules for together and apart')
    .argument('<lesson>', 'the lesson folder')
    .option('--count <number>', 'how many squads; as many as the plan has unless told')
    .option('--seed <number>', 'another draw, instead of the plan’s')
    .option('--save', 'write them into plan.json and roster.csv')
    .option('--json', 'print JSON')
    .action(run((lesson, options) => runPlanSquads(lesson, options, terminal)));
  program
    .command('walk')
    .description('walk a simulated class round and say where it would queue')
    .argument('<lesson>', 'the lesson folder')
    .option('--seed <number>', 'another class', '1')
    .option('--spread <share>', 'how much squads’ paces differ, 0 to 0.9', '0.2')
    .option('--json', 'print JSON')
    .action(run((lesson, options) => runWalk(lesson, options, terminal)));
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
    .action(run((lesson, list, options) => runRoster([lesson, list], options, terminal)));
  program
    .command('exercises')
    .description('list the library of exercises')
    .option('--take <file>', 'take a library of your own over (exercises.json)')
    .option('--forget', 'do without your own again')
    .option('--json', 'print JSON')
    .action(run((options) => runExercises(options, terminal)));
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
    .action(run((folder, options) => runPlanNew(folder, options, terminal)));
  plan
    .command('versions')
    .description('list the plan’s earlier states, newest first')
    .argument('<lesson>', 'the lesson folder')
    .option('--json', 'print JSON')
    .action(run((lesson, options) => runPlanVersions(lesson, options, terminal)));
  plan
    .command('compare')
    .description('say what changed in the plan since an earlier state')
    .argument('<lesson>', 'the lesson folder')
    .option('--since <version>', 'as “plan versions” lists it; the newest unless told')
    .option('--json', 'print JSON')
    .action(run((lesson, options) => runPlanCompare(lesson, options, terminal)));
  plan
    .command('copy')
    .description('copy a lesson for another day: plan, roster and photos, no clips, no marks')
    .argument('<lesson>', 'the lesson folder')
    .argument('<folder>', 'a folder that is not there yet')
    .requiredOption('--date <date>', 'the new lesson’s day')
    .option('--code <code>', 'a code of its own; otherwise the next revision of the cards')
    .option('--json', 'print JSON')
    .action(run((lesson, folder, options) => runPlanCopy([lesson, folder], options, terminal)));
}
