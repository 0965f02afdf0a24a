import { Command, CommanderError } from 'commander';
import { stepWords } from '../../renderer/text/english/steps.ts';
import { addClipCommands } from './clip-commands.ts';
import { addDepartmentCommands } from './department-commands.ts';
import { addHandInCommands } from './hand-in-commands.ts';
import { addKeepingCommands } from './keeping-commands.ts';
import { addPlanningCommands } from './planning-commands.ts';
import type { Run } from './run.ts';
import { type ExitCode, openTerminal } from './terminal.ts';

const FOOT = `
Exit codes: 0 done, 1 done but something needs a look, 2 could not be done.
Results go to the standard output, everything else to the error stream. Nothing leaves this machine, but paths
and hashes to a queue of your own where you name one.

Exercise and pupils' video ask for care: follow your school's policy and local law on filming, consent and
keeping, and your local code of safe practice. Medical questions go to licensed staff.`;

const terminal = openTerminal(stepWords);
let exitCode: ExitCode = 0;

const run: Run =
  (work) =>
  async (...input) => {
    exitCode = await work(...input);
  };

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
  .action(run(async (options) => (await import('./commands/demo.ts')).runDemo(options, terminal)));

program
  .command('desk')
  .description('open the window, in a browser of this machine; nothing leaves the machine')
  .argument('[lesson]', 'the lesson folder to open first')
  .option('--port <number>', 'port on 127.0.0.1, instead of the usual one; 0 takes any')
  .option('--no-open', 'print the address instead of opening a browser')
  .action(
    run(async (lesson, options) => (await import('./commands/desk.ts')).runDesk(lesson, options, terminal)),
  );

addPlanningCommands(program, terminal, run);
addClipCommands(program, terminal, run);
addHandInCommands(program, terminal, run);
addKeepingCommands(program, terminal, run);
addDepartmentCommands(program, terminal, run);

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
