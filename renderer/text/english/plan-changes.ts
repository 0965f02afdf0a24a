import type { PlanChange, PlanPart } from '../../../src-core/lesson/compare-plans.ts';
import { list } from './amounts.ts';
import { FIELD_WORDS } from './plan-fields.ts';

const PARTS: Readonly<Record<PlanPart, string>> = {
  stations: 'Station',
  squads: 'Squad',
  periods: 'Period',
  standards: 'Standard',
  criteria: 'Criterion',
  squadCriteria: 'Criterion of a squad',
  lesson: 'Lesson',
  school: 'School',
  briefing: 'Briefing',
  timing: 'Times',
  grouping: 'How squads are formed',
  rotation: 'Rotation',
  tolerances: 'Tolerances',
  marking: 'Marking',
  gradeSheet: 'Grade sheet',
};

/** One difference between two plans as a sentence, such as `Station B, reps: 10, was 12.` */
export function describePlanChange({ part, code, kind, field, was, now }: PlanChange): string {
  const subject = code === null ? PARTS[part] : `${PARTS[part]} ${code}`;
  if (kind === 'added') return `${subject} was added.`;
  if (kind === 'removed') return `${subject} was taken out.`;
  if (kind === 'moved') return `${subject}: another order, ${show(now)}.`;
  const what = `${subject}, ${FIELD_WORDS[field ?? ''] ?? field ?? ''}`;
  if (was === null) return `${what}: ${show(now)}, was empty.`;
  return now === null ? `${what}: empty, was ${show(was)}.` : `${what}: ${show(now)}, was ${show(was)}.`;
}

function show(value: unknown): string {
  if (Array.isArray(value)) {
    if (value.length === 0) return 'none';
    // A route reads as its stations are painted.
    return value.every(isStationCode) ? value.join(' ') : list(value.map(show));
  }
  if (typeof value !== 'object' || value === null)
    return typeof value === 'string' ? `“${value}”` : String(value);
  return Object.values(value).map(show).join(' ');
}

function isStationCode(value: unknown): boolean {
  return typeof value === 'string' && /^[A-Z0-9]{1,3}$/.test(value);
}
