import { describe, expect, test } from 'vitest';
import { findExercises } from '../../../../renderer/features/plan/find-exercises.ts';
import { findStationPlace, listPlaces } from '../../../../renderer/features/plan/find-field.ts';
import { applyEdits } from '../../../../renderer/features/plan/plan-draft.ts';
import type { PlanEdit } from '../../../../renderer/features/plan/plan-edit.ts';
import {
  addPeriod,
  changeObjective,
  changePeriod,
  changeSentence,
  changeTolerance,
  changeWord,
  removePeriod,
} from '../../../../renderer/features/plan/plan-edits.ts';
import { buildRotation } from '../../../../renderer/features/plan/rotation.ts';
import {
  allowLeg,
  changeDistance,
  changeStop,
  forbidLeg,
} from '../../../../renderer/features/plan/route-edits.ts';
import {
  addClipCriterion,
  addScaleStep,
  addStandards,
  changeAward,
  changeAwardRule,
  findFreeShortCode,
  removeClipCriterion,
  removeStandard,
  toggleStandard,
} from '../../../../renderer/features/plan/rubric-edits.ts';
import { getSlotTimes } from '../../../../renderer/features/plan/slot-times.ts';
import {
  addStation,
  changeOptional,
  changeStation,
  findFreeCode,
  moveStation,
  putExercise,
  recodeStation,
  removeStation,
} from '../../../../renderer/features/plan/station-edits.ts';
import { checkPlan } from '../../../../src-core/lesson/check-plan.ts';
import { findMetres } from '../../../../src-core/lesson/lesson-timing.ts';
import { BUILT_IN_EXERCISES } from '../../../../src-core/lesson/library/built-in.ts';
import { type Plan, planSchema } from '../../../../src-core/lesson/plan.ts';
import { buildSmallPlan } from '../../lesson/small-plan.ts';

/** The plan after some edits, each on what the one before left; what comes out must be a plan that can be saved. */
function edit(...edits: readonly PlanEdit[]): Plan {
  return planSchema.parse(applyEdits(buildSmallPlan(), edits));
}

const listCodes = ({ stations }: Plan) => stations.map(({ code }) => code).join('');
const listRoutes = ({ squads }: Plan) => squads.map(({ route }) => route.join(''));
const listProblems = (plan: Plan) => checkPlan(plan).map(({ code }) => code);

describe('stations', () => {
  test('a new one takes the first free letter and is on no route yet', () => {
    const plan = edit(addStation, addStation);
    expect(listCodes(plan)).toBe('ABCD');
    expect(listRoutes(plan)).toEqual(['AB', 'BA']);
    expect(findFreeCode(edit(recodeStation('A', 'D')))).toBe('A');
  });

  test('one taken away leaves no route, start, leg or distance behind that names it', () => {
    const plan = edit(addStation, forbidLeg('A', 'B'), changeDistance('A', 'C', 40), removeStation('A'));
    expect(listCodes(plan)).toBe('BC');
    expect(listRoutes(plan)).toEqual(['B', 'B']);
    expect(plan.rotation).toMatchObject({ forbidden: [], distances: [] });
    expect(listProblems(plan)).toEqual(['plan-squads-meet']);
  });

  test('another exercise of the library takes the old one’s film and kit away with its words', () => {
    const [exercise] = BUILT_IN_EXERCISES;
    if (!exercise) throw new Error('no exercises');
    const { equipment: _, ...bare } = exercise;
    const plan = edit(
      changeStation('A', {
        demonstration: 'https://quay.example/old',
        equipment: 'A crate',
        clue: 'Where nets dry',
      }),
      putExercise('A', bare),
    );
    expect(plan.stations[0]).toMatchObject({
      exercise: bare.name,
      clue: 'Where nets dry',
      place: 'Pier head',
    });
    expect(plan.stations[0]).not.toHaveProperty('demonstration');
    expect(plan.stations[0]).not.toHaveProperty('equipment');
  });

  test('the last one stays', () => {
    expect(listCodes(edit(removeStation('A'), removeStation('B')))).toBe('B');
  });

  test('moving changes the list and no route; at the end there is no further', () => {
    expect(listCodes(edit(moveStation('B', -1)))).toBe('BA');
    expect(listCodes(edit(moveStation('B', 1)))).toBe('AB');
    expect(listRoutes(edit(moveStation('B', -1)))).toEqual(['AB', 'BA']);
  });

  test('another letter is taken over wherever the plan names the station', () => {
    const plan = edit(forbidLeg('A', 'B'), changeDistance('B', 'A', 30), recodeStation('A', 'X1'));
    expect(listRoutes(plan)).toEqual(['X1B', 'BX1']);
    expect(plan.rotation.forbidden).toEqual([['X1', 'B']]);
    expect(findMetres(plan, 'X1', 'B')).toBe(30);
    expect(listProblems(plan)).toEqual([]);
  });

  test('a letter that another station has is left for the check to refuse', () => {
    expect(listProblems(edit(recodeStation('A', 'B')))).toContain('plan-code-twice');
  });

  test('an emptied field is taken away, not kept as an empty text', () => {
    const plan = edit(changeOptional('A', 'clue', 'Where nets dry'), changeOptional('A', 'clue', ''));
    expect('clue' in (plan.stations[0] ?? {})).toBe(false);
  });
});

describe('routes', () => {
  test('a stop that the route comes to elsewhere changes places, so that each is visited once', () => {
    const plan = edit(changeStop('teal', 0, 'B'));
    expect(listRoutes(plan)).toEqual(['BA', 'BA']);
    expect(plan.squads[0]?.startsAt).toBe('B');
    expect(buildRotation(plan).map(({ meeting, free }) => [meeting, free])).toEqual([
      [['B'], ['A']],
      [['A'], ['B']],
    ]);
  });

  test('a slot beyond the route changes nothing', () => {
    expect(listRoutes(edit(changeStop('teal', 7, 'B')))).toEqual(['AB', 'BA']);
  });

  test('a leg is forbidden once and one way, a distance holds both ways', () => {
    const plan = edit(forbidLeg('A', 'B'), forbidLeg('A', 'B'), forbidLeg('A', 'A'));
    expect(plan.rotation.forbidden).toEqual([['A', 'B']]);
    expect(edit(forbidLeg('A', 'B'), allowLeg('B', 'A')).rotation.forbidden).toEqual([['A', 'B']]);
    expect(edit(forbidLeg('A', 'B'), allowLeg('A', 'B')).rotation.forbidden).toEqual([]);
    const measured = edit(changeDistance('A', 'B', 50), changeDistance('B', 'A', 60));
    expect([findMetres(measured, 'A', 'B'), measured.rotation.distances.length]).toEqual([60, 1]);
    expect(
      findMetres(edit(changeDistance('A', 'B', 5), changeDistance('A', 'B', null)), 'A', 'B'),
    ).toBeNull();
  });
});

describe('the rubric', () => {
  test('a new criterion has a code of its own, whatever it is called', () => {
    const plan = edit(
      addClipCriterion('Right place'),
      addClipCriterion('Right place'),
      addClipCriterion('礼'),
    );
    expect(plan.rubric.clip.map(({ code }) => code)).toEqual([
      'place',
      'reps',
      'right-place',
      'right-place-2',
      'own',
    ]);
    expect(findFreeShortCode([], 'Über alles!')).toBe('u-ber-alles');
  });

  test('the last criterion of a clip stays', () => {
    const plan = edit(removeClipCriterion('place'), removeClipCriterion('reps'));
    expect(plan.rubric.clip.map(({ code }) => code)).toEqual(['reps']);
  });

  test('the award keeps its points until its rule changes', () => {
    expect(edit(changeAward(3), changeAwardRule('all-or-nothing')).rubric.award).toEqual({
      rule: 'all-or-nothing',
      points: 3,
    });
    expect(edit(changeAwardRule('sum')).rubric.award).toEqual({ rule: 'sum' });
  });

  test('a standard taken out is taken off every criterion', () => {
    const standard = { code: 's1', text: 'Moves skilfully', source: 'own' };
    const tagged = edit(
      addStandards([standard, standard]),
      toggleStandard('place', 's1'),
      toggleStandard('care', 's1'),
    );
    expect(tagged.standards).toHaveLength(2);
    expect(tagged.rubric.clip[0]?.standards).toEqual(['s1']);
    const { rubric, standards } = edit(
      addStandards([standard]),
      toggleStandard('place', 's1'),
      toggleStandard('care', 's1'),
      removeStandard('s1'),
    );
    expect([standards, rubric.clip[0]?.standards, rubric.squad[0]?.standards]).toEqual([[], [], []]);
  });

  test('a further mark stands below the last, so that the scale stays in order', () => {
    expect(edit(addScaleStep, addScaleStep).scale.map(({ fromPercent }) => fromPercent)).toEqual([
      90, 70, 55, 40,
    ]);
    expect(listProblems(edit(addScaleStep, addScaleStep))).toEqual([]);
  });
});

describe('time and briefing', () => {
  test('a further period follows the last one and does not overlap', () => {
    const plan = edit(addPeriod);
    expect(plan.periods.at(-1)).toEqual({ code: 'p3', start: '10:45', end: '11:30' });
    expect(listProblems(plan)).toEqual([]);
  });

  test('the lesson’s own period stays', () => {
    expect(edit(removePeriod('p1'), removePeriod('p2')).periods.map(({ code }) => code)).toEqual(['p1']);
  });

  test('slots share what warm-up and clearing up leave', () => {
    // 45 minutes less 6 and 5 leave 34 for two slots.
    expect(getSlotTimes(edit())).toEqual({ seconds: 1020, starts: ['09:06', '09:23'] });
    expect(getSlotTimes(edit(changePeriod('p1', { end: '09:10' })))).toEqual({ seconds: null, starts: [] });
  });

  test('a sentence is changed, added after the last, and taken out by emptying it', () => {
    const both = edit(changeSentence('rules', 0, 'Film the card.'), changeSentence('rules', 1, 'Walk.'));
    expect(both.briefing.rules).toEqual(['Film the card.', 'Walk.']);
    const one = edit(
      changeSentence('rules', 0, 'Film the card.'),
      changeSentence('rules', 1, 'Walk.'),
      changeSentence('rules', 0, ''),
    );
    expect(one.briefing.rules).toEqual(['Walk.']);
    expect(
      edit(changeWord(0, { word: 'unison', meaning: 'as one' }), changeWord(0, null)).briefing.words,
    ).toEqual([]);
    expect('objective' in edit(changeObjective('Keep time.'), changeObjective('')).briefing).toBe(false);
  });

  test('one tolerance is changed and the rest left', () => {
    const { tolerances } = edit();
    expect(edit(changeTolerance('togetherSeconds', 0.5)).tolerances).toEqual({
      ...tolerances,
      togetherSeconds: 0.5,
    });
  });
});

describe('the way from a problem to its field', () => {
  test('leads to the nearest part that may stand on the sheet', () => {
    expect(listPlaces('stations[2].cycleSeconds[1]')).toEqual([
      'stations[2].cycleSeconds[1]',
      'stations[2].cycleSeconds',
      'stations[2]',
      'stations',
    ]);
    expect([findStationPlace('stations[12].reps'), findStationPlace('squads[1].route')]).toEqual([12, null]);
  });
});

describe('finding an exercise', () => {
  const library = [
    { code: 'step', name: 'Bench step-ups', muscles: 'legs' },
    { code: 'squat', name: 'Squat reaches', muscles: 'legs', equipment: 'a bench' },
    { code: 'plank', name: 'Plank taps', muscles: 'trunk' },
  ];
  const find = (text: string) => findExercises(library, text).map(({ code }) => code);

  test('takes beginnings of words in any order, names before other words', () => {
    expect(find('be')).toEqual(['step', 'squat']);
    expect(find('reach SQ')).toEqual(['squat']);
    expect(find('step-ups')).toEqual(['step']);
    expect(find('legs')).toEqual(['step', 'squat']);
    expect(find('uat')).toEqual([]);
  });

  test('gives all where nothing is typed yet', () => {
    expect(find('')).toEqual(['step', 'squat', 'plank']);
  });
});
