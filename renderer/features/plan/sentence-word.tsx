import type { Station } from '../../../src-core/lesson/plan.ts';
import { STATIONS } from '../../text/english/plan-stations.ts';
import type { PlanEdit } from './plan-edit.ts';
import { changeOptional } from './station-edits.ts';
import { TypedWord } from './typed-word.tsx';

/** A station's optional sentence; emptied, it is gone. */
export function SentenceWord({
  station,
  field,
  at,
  isWide = false,
  onChange,
}: {
  readonly station: Station;
  readonly field: keyof typeof STATIONS.fields;
  /** Place of the station in the list, from 0. */
  readonly at: number;
  readonly isWide?: boolean;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const { label, hint } = STATIONS.fields[field];
  // The folder of the pictures goes without saying.
  const before = field === 'photo' ? 'photos/' : '';
  const value = (station[field] ?? '').replace(before, '');
  return (
    <TypedWord
      label={STATIONS.fieldOf(label, station.code)}
      shown={value}
      hint={hint}
      at={`stations[${at}].${field}`}
      type={field === 'demonstration' ? 'url' : 'text'}
      value={value}
      isOptional
      isWide={isWide}
      onDecide={(text) => onChange(changeOptional(station.code, field, text && before + text))}
    />
  );
}
