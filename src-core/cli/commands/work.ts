import { once } from 'node:events';
import { availableParallelism } from 'node:os';
import { WATCHING } from '../../../renderer/text/english/watching.ts';
import { getAnalysisPool } from '../../host/evidence-ports.ts';
import { workOff } from '../../host/queue/work-off.ts';
import { toOneLine } from '../one-line.ts';
import { formatJson, PLAIN_NAMES, sayProblems } from '../say.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `work` as typed. */
export interface WorkOptions {
  /** Address of a Redis. */
  readonly queue: string;
  readonly json?: boolean;
}

/** `work <folders…>`: watches clips of lessons below these folders, as others hand them out, until it is stopped. */
export async function runWork(
  folders: readonly string[],
  options: WorkOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const analysis = getAnalysisPool();
  let [done, failed] = [0, 0];
  const work = await workOff(options.queue, {
    folders,
    analysis,
    atOnce: availableParallelism(),
    signal: terminal.signal,
    onDone: ({ path }, problems) => {
      done += 1;
      if (problems.length > 0) failed += 1;
      terminal.say(`${WATCHING.done(toOneLine(path))}\n`);
      sayProblems(terminal, problems, PLAIN_NAMES);
    },
    onUnfit: (reason) => terminal.say(`! ${WATCHING.unfit(reason)}\n`),
    onSilence: () => terminal.say(`${WATCHING.silence}\n`),
  });
  if (!work.ok) {
    sayProblems(terminal, work.problems, PLAIN_NAMES);
    return 2;
  }
  terminal.say(`${WATCHING.atWork}\n`);
  if (!terminal.signal.aborted) await once(terminal.signal, 'abort');
  await work.value.close();
  await analysis.close();
  terminal.write(options.json ? formatJson({ done, failed }) : `${WATCHING.ended(done, failed)}\n`);
  return failed > 0 ? 1 : 0;
}
