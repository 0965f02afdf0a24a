import { expect, test } from 'vitest';
import { narrowToTouched } from '../../../../renderer/storage/narrow-to-touched.ts';
import { buildFlag, buildView, buildWalk } from '../walked-lesson.ts';

/** Filed under Plum, about a clip that counts for Teal. */
const twice = buildFlag({ code: 'handed-in-twice', squad: 'plum', clip: 't1', alsoIn: ['teal'] });
const view = buildView(buildWalk(), [twice]);
const squadsOf = (clips: ReturnType<typeof narrowToTouched>['clips']) =>
  new Set(clips.map(({ squad }) => squad));

test('a flag that is filed under another squad goes with the squad whose clip it is about', () => {
  const act = { kind: 'clip-confirmed', clip: 't2', answers: {} } as const;
  expect(narrowToTouched(view, [act]).flags).toEqual([twice]);
});

test('to settle such a flag touches both squads', () => {
  const act = { kind: 'flag-settled', flag: twice.key, settled: 'kept', reason: null } as const;
  expect(squadsOf(narrowToTouched(view, [act]).clips)).toEqual(new Set(['teal', 'plum']));
});
