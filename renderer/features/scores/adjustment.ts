import type { Attendance } from '../../../src-core/lesson/roster.ts';
import type { Override } from '../../../src-core/marking/decisions.ts';
import type { JournalAct, OverrideTarget } from '../../../src-core/marking/journal-event.ts';
import type { Selected } from './selection.ts';

/** The form of an adjustment as it is filled in; texts as typed. */
export interface AdjustmentForm {
  readonly attendance: Attendance;
  readonly arrived: string;
  /** What the points are for: `sum`, or a clip's id. */
  readonly of: string;
  readonly type: 'by' | 'to';
  readonly amount: string;
  readonly reason: string;
}

/** The form as it stands before anything is changed. */
export function buildForm(selected: Selected): AdjustmentForm {
  const isPupil = selected.kind === 'pupil';
  const attendance = isPupil ? selected.score.attendance : null;
  const override = getOverride(selected, 'sum');
  return {
    attendance: attendance?.attendance ?? 'present',
    arrived: attendance?.arrived ?? '',
    of: 'sum',
    ...fillOverride(override),
  };
}

/** The part of the form that an override fills; empty where there is none. */
export function fillOverride(override: Override | null): Pick<AdjustmentForm, 'type' | 'amount' | 'reason'> {
  if (!override) return { type: 'by', amount: '', reason: '' };
  return {
    type: override.change.type,
    amount: String(override.change.points),
    reason: override.reason,
  };
}

/** The override in force of the sum or of one clip; null where there is none. */
export function getOverride(selected: Selected, of: string): Override | null {
  if (of === 'sum') return selected.kind === 'pupil' ? selected.score.override : selected.row.score.override;
  return selected.row.score.slots.find(({ clip }) => clip?.clip === of)?.override ?? null;
}

const LOCAL_TIME = /^([01]?\d|2[0-3]):[0-5]\d$/;

/** What is still missing before the form can be decided: names of fields. */
export function listMissing(form: AdjustmentForm): readonly ('arrived' | 'amount' | 'reason')[] {
  const isWrong = form.attendance === 'late' && form.arrived !== '' && !LOCAL_TIME.test(form.arrived.trim());
  const amount = form.amount.trim().replace('−', '-').replace(',', '.');
  const hasAmount = amount !== '';
  const isBad = hasAmount && (!Number.isFinite(Number(amount)) || (form.type === 'to' && Number(amount) < 0));
  return [
    ...(isWrong ? (['arrived'] as const) : []),
    ...(isBad ? (['amount'] as const) : []),
    ...(hasAmount && form.reason.trim() === '' ? (['reason'] as const) : []),
  ];
}

/** The decisions that a filled form comes to: only what differs from what stands. */
export function listDecisions(selected: Selected, form: AdjustmentForm): readonly JournalAct[] {
  return [...listAttendance(selected, form), ...listOverride(selected, form)];
}

function listAttendance(selected: Selected, form: AdjustmentForm): JournalAct[] {
  if (selected.kind !== 'pupil') return [];
  const { attendance, arrived } = selected.score.attendance;
  const time =
    form.attendance === 'late' && form.arrived !== '' ? form.arrived.trim().padStart(5, '0') : null;
  if (attendance === form.attendance && arrived === time) return [];
  const pupil = selected.score.pupil.id;
  return [{ kind: 'attendance-set', pupil, attendance: form.attendance, arrived: time }];
}

function listOverride(selected: Selected, form: AdjustmentForm): JournalAct[] {
  const amount = form.amount.trim().replace('−', '-').replace(',', '.');
  const before = getOverride(selected, form.of);
  if (amount === '') return [];
  const change = { type: form.type, points: Number(amount) };
  const reason = form.reason.trim();
  const isSame =
    before?.change.type === change.type && before.change.points === change.points && before.reason === reason;
  return isSame ? [] : [{ kind: 'points-overridden', of: getTarget(selected, form.of), change, reason }];
}

/** The decision that takes a change by hand back. */
export function takeBack(selected: Selected, of: string, reason: string): JournalAct {
  return { kind: 'points-overridden', of: getTarget(selected, of), change: null, reason };
}

function getTarget(selected: Selected, of: string): OverrideTarget {
  if (of !== 'sum') return { type: 'clip', clip: of };
  return selected.kind === 'pupil'
    ? { type: 'pupil', pupil: selected.score.pupil.id }
    : { type: 'squad', squad: selected.row.squad };
}
