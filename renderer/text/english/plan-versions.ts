import { count } from './amounts.ts';

/** All that is said of a plan's earlier states. */
export const VERSIONS = {
  head: 'What changed',
  none: 'Nothing yet. Each change keeps the state before it.',
  sentence: (versions: number) => `${count(versions, 'earlier state')} kept in the lesson folder`,
  before: (time: string) => `before ${time}`,
  since: (time: string) => `What is different now from the plan before ${time}`,
  same: 'The same as now.',
  goBack: 'Back to this state',
  more: (versions: number) => `${count(versions, 'older state')} more`,
} as const;
