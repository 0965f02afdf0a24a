import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { explainWalk } from '../../../src-core/matching/explain-walk.ts';
import type { SquadMatch } from '../../../src-core/matching/match-squad.ts';
import type { PlacedClip } from '../../../src-core/matching/observation.ts';
import { buildWalk } from '../../../src-core/matching/walk.ts';
import { dropFewest, type SmallWalk, tellEveryStory } from './every-story.ts';
import { match, placed } from './filmed.ts';
import { randomLesson } from './random-lesson.ts';

const RUNS = 2000;

function matchLesson({ route, clips, retake }: SmallWalk): SquadMatch {
  return match(route.join(''), clips, retake);
}

/** Counting clips in the order they were filmed. */
function walked(lesson: SmallWalk, result: SquadMatch) {
  return result.assignments.filter(({ role }, index) => role === 'counts' && lesson.clips[index]?.hasOrder);
}

describe('2,000 random lessons', () => {
  test('the explanation, and every other place of every clip, costs what telling every story finds', () => {
    fc.assert(
      fc.property(randomLesson, (lesson) => {
        const explained = explainWalk(buildWalk(lesson));
        const stories = tellEveryStory(lesson);
        expect(explained.best.cost).toBeCloseTo(stories.cost, 9);
        explained.choices.forEach((choices, row) => {
          const places = choices.map(({ role, slot, cost }): [string, string] => [
            `${role === 'wrong-place' ? 'wrong' : 'there'}:${slot}`,
            cost.toFixed(6),
          ]);
          const told = [...(stories.places[row] ?? [])].map(([place, cost]) => [place, cost.toFixed(6)]);
          expect(Object.fromEntries(places)).toEqual(Object.fromEntries(told));
        });
      }),
      { numRuns: RUNS },
    );
  });

  test('the clips flagged as out of order are as few as any that leave order, exactly', () => {
    fc.assert(
      fc.property(randomLesson, (lesson) => {
        const result = matchLesson(lesson);
        const counting = walked(lesson, result);
        const slots = counting.map(({ slot }) => Number(slot));
        const flagged = counting.flatMap(({ inOrder }, position) => (inOrder ? [] : [position]));
        const fewest = dropFewest(slots);
        expect(flagged).toHaveLength(fewest.length);
        if (counting.every(({ stationFrom }) => stationFrom !== 'inferred')) expect(flagged).toEqual(fewest);
        const left = slots.filter((_, position) => !flagged.includes(position));
        expect(left).toEqual(left.toSorted((one, other) => one - other));
        expect(result.flags.filter(({ code }) => code === 'out-of-order')).toHaveLength(flagged.length);
      }),
      { numRuns: RUNS },
    );
  });

  test('every clip is placed once, and every slot has one counting clip, one wrong place or a missing flag', () => {
    fc.assert(
      fc.property(randomLesson, (lesson) => {
        const result = matchLesson(lesson);
        expect(result.assignments.map(({ clip }) => clip)).toEqual(lesson.clips.map(({ clip }) => clip));
        for (const slot of lesson.route.keys()) {
          const holders = result.assignments.filter(
            (one) => one.slot === slot && (one.role === 'counts' || one.role === 'wrong-place'),
          );
          expect(holders).toHaveLength(result.missing.includes(slot) ? 0 : 1);
        }
        expect(
          result.flags.filter(({ code }) => code === 'missing').map((flag) => 'slot' in flag && flag.slot),
        ).toEqual(result.missing);
        const perClip = result.flags.flatMap(({ clip }) => clip ?? []);
        expect(new Set(perClip).size).toBe(perClip.length);
      }),
      { numRuns: RUNS },
    );
  });

  test('a known station goes to its own slot or to a wrong place, never to another station as if it were right', () => {
    fc.assert(
      fc.property(randomLesson, (lesson) => {
        const result = matchLesson(lesson);
        result.assignments.forEach((one, index) => {
          const clip = lesson.clips[index];
          const byHand = clip?.slotByTeacher ?? lesson.route.length;
          if (byHand < lesson.route.length) expect(one.slot).toBe(byHand);
          else if (clip?.observation.known && (one.role === 'counts' || one.role === 'retake')) {
            expect(lesson.route[Number(one.slot)]).toBe(clip.observation.station);
          }
        });
      }),
      { numRuns: RUNS },
    );
  });

  test('other letters for the stations change nothing', () => {
    fc.assert(
      fc.property(randomLesson, (lesson) => {
        const relabel = (code: string) => String.fromCharCode(155 - code.charCodeAt(0));
        const clips = lesson.clips.map((clip): PlacedClip => {
          const { observation } = clip;
          if (observation.known)
            return { ...clip, observation: { ...observation, station: relabel(observation.station) } };
          const scores = Object.fromEntries(
            Object.entries(observation.scores).map(([code, score]) => [relabel(code), score]),
          );
          return { ...clip, observation: { known: false, scores } };
        });
        const places = (result: SquadMatch) =>
          result.assignments.map(({ role, slot, inOrder }) => ({ role, slot, inOrder }));
        const relabelled = { ...lesson, clips, route: lesson.route.map(relabel) };
        expect(places(matchLesson(relabelled))).toEqual(places(matchLesson(lesson)));
      }),
      { numRuns: 500 },
    );
  });

  test('one more doubtful clip never changes where the known ones were filmed', () => {
    fc.assert(
      fc.property(randomLesson, fc.nat(8), fc.boolean(), (lesson, at, hasOrder) => {
        const doubtful = placed('?', 99, { hasOrder });
        const more = matchLesson({ ...lesson, clips: lesson.clips.toSpliced(at, 0, doubtful) });
        const before = matchLesson(lesson);
        lesson.clips.forEach((clip, index) => {
          if (!clip.observation.known) return;
          const [then, now] = [before, more].map((result) =>
            result.assignments.find((one) => one.clip === clip.clip),
          );
          expect(now?.station).toBe(then?.station);
          expect(now?.stationFrom).toBe(then?.stationFrom);
          const alone = lesson.clips.filter(
            (other) =>
              other.observation.known &&
              clip.observation.known &&
              other.observation.station === clip.observation.station,
          );
          const untouched = lesson.clips.every(({ slotByTeacher }) => slotByTeacher === null);
          if (alone.length === 1 && untouched && lesson.route.includes(String(then?.station))) {
            expect([index, now?.role, now?.slot]).toEqual([index, 'counts', then?.slot]);
          }
        });
      }),
      { numRuns: 500 },
    );
  });
});
