import { type Plan, planSchema } from '../../../src-core/lesson/plan.ts';

/** A well-formed plan of two squads and two stations; `change` edits the raw JSON before it is read. */
export function buildSmallPlan(change: (raw: ReturnType<typeof getRawPlan>) => void = () => {}): Plan {
  const raw = getRawPlan();
  change(raw);
  return planSchema.parse(raw);
}

/** The raw JSON of the small plan. */
export function getRawPlan() {
  return {
    format: 'routemark-plan',
    version: 2,
    lesson: {
      code: 'PIER',
      revision: 1,
      title: 'Pier circuit',
      school: 'Cobble Quay School',
      className: '7 Dulse',
      date: '2025-05-15',
      period: 'p1',
    },
    zone: 'America/Halifax',
    periods: [
      { code: 'p1', start: '09:00', end: '09:45' },
      { code: 'p2', start: '09:50', end: '10:35' },
    ],
    stations: [
      { code: 'A', place: 'Pier head', exercise: 'Squat reaches', reps: 10, cycleSeconds: [2, 4] },
      { code: 'B', place: 'Net loft', exercise: 'Side shuffles', reps: 12, counting: 'side' },
    ],
    squads: [
      {
        code: 'teal',
        name: 'Teal',
        pinnie: { name: 'teal', colour: '#1F8A86' },
        tablet: 'tablet 1',
        startsAt: 'A',
        route: ['A', 'B'],
      },
      {
        code: 'plum',
        name: 'Plum',
        pinnie: { name: 'plum', colour: '#7B3F7A' },
        tablet: 'tablet 2',
        startsAt: 'B',
        route: ['B', 'A'],
      },
    ],
    rubric: {
      clip: [
        { code: 'place', label: 'Right place', checks: 'place' },
        { code: 'reps', label: 'Full reps', checks: 'reps' },
      ],
      squad: [{ code: 'care', label: 'Care of kit', maxPoints: 2 }],
    },
    orderRule: 'void-clip',
    scale: [
      { mark: '4', fromPercent: 90 },
      { mark: '3', fromPercent: 70 },
    ],
  };
}
