import type { Station } from '../../../src-core/lesson/plan.ts';
import { STATIONS } from '../../text/english/plan-stations.ts';
import type { PlanEdit } from './plan-edit.ts';
import { RANGES } from './plan-edits.ts';
import { changeOptional } from './station-edits.ts';
import { TypedWord } from './typed-word.tsx';

/** The usual length of one cycle, from shortest to longest; one of the two alone stands for both. */
export function TempoWords({
  station: { code, cycleSeconds },
  at,
  onChange,
}: {
  readonly station: Station;
  readonly at: string;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const [from, to] = cycleSeconds ?? [null, null];
  const decide = (typed: string, end: 0 | 1) => {
    if (typed === '') return onChange(changeOptional(code, 'cycleSeconds', null));
    const seconds = Number(typed);
    const range = (cycleSeconds ?? [seconds, seconds]).with(end, seconds) as [number, number];
    onChange(changeOptional(code, 'cycleSeconds', range));
  };
  const ends = [
    { label: STATIONS.shortest, seconds: from },
    { label: STATIONS.longest, seconds: to },
  ] as const;
  return ends.map(({ label, seconds }, end) => (
    <span key={label}>
      {STATIONS.tempoWords[end]}{' '}
      <TypedWord
        label={label}
        shown={seconds === null ? '' : String(seconds)}
        hint="…"
        at={at}
        type="number"
        range={RANGES.cycleSeconds}
        value={seconds === null ? '' : String(seconds)}
        isOptional
        onDecide={(typed) => decide(typed, end as 0 | 1)}
      />{' '}
      {end === 1 && STATIONS.tempoWords[2]}
    </span>
  ));
}
