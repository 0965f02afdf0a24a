import type { QueueProblem } from '../../../src-core/contract/queue-problem.ts';
import type { Wordings } from './wordings.ts';

/** Words for clips that could not be handed to workers. */
export const queueProblems: Wordings<QueueProblem['code']> = {
  'queue-address-odd': () => ({
    what: 'That is no address of a queue.',
    todo: 'Write it as redis://127.0.0.1:6379, with the name or number of your own machine.',
  }),
  'queue-engine-missing': () => ({
    what: 'The packages for a queue were left out when Routemark was installed.',
    todo: 'Install Routemark again with its optional packages, or do without a queue.',
  }),
  'queue-unreachable': ({ host, detail }) => ({
    what: `No Redis answers at ${host}${detail === '' ? '' : ` (${detail})`}.`,
    todo: 'Start it (Debian: redis-server), or check the address.',
  }),
};
