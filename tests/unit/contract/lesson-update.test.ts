import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyUpdate, buildPatch } from '../../../src-core/contract/lesson-update.ts';
import type { LessonView } from '../../../src-core/contract/lesson-view.ts';

/** Views as far as patches look at them: lists of items with keys, and parts without. */
const arbitraryView: fc.Arbitrary<LessonView> = fc
  .record({
    clips: listOf('id'),
    squads: listOf('code'),
    flags: listOf('key'),
    squadScores: listOf('squad'),
    plan: fc.record({ zone: fc.constantFrom('a', 'b') }),
    problems: fc.array(fc.record({ code: fc.constantFrom('x', 'y') }), { maxLength: 2 }),
    pupilScores: fc.array(fc.record({ pupil: fc.record({ id: fc.constantFrom('1') }), sum: fc.nat(2) }), {
      maxLength: 1,
    }),
  })
  .map((view) => ({ ...view, lesson: 'l', revision: 1 }) as unknown as LessonView);

function listOf(key: string) {
  const item = fc.record({
    [key]: fc.constantFrom('1', '2', '3', '4'),
    size: fc.oneof(fc.nat(2), fc.constant(Infinity)),
  });
  return fc.uniqueArray(item, { selector: (one) => one[key], maxLength: 4 });
}

test('a patch leads from any view to any other', () => {
  fc.assert(
    fc.property(arbitraryView, arbitraryView, (from, other) => {
      const to = { ...other, revision: 2 };
      expect(applyUpdate(from, { kind: 'patch', patch: buildPatch(from, to) })).toEqual(to);
    }),
  );
});

test('what did not change stays the same object, and is not sent', () => {
  fc.assert(
    fc.property(arbitraryView, (from) => {
      const [first, ...rest] = structuredClone(from.clips);
      const clips = first ? [{ ...first, note: 'new' }, ...rest] : [];
      const patch = buildPatch(from, { ...structuredClone(from), clips, revision: 2 });
      expect(patch.parts).toEqual({});
      expect(Object.keys(patch.lists)).toEqual(first ? ['clips'] : []);
      const view = applyUpdate(from, { kind: 'patch', patch });
      expect(view?.flags).toBe(from.flags);
      rest.forEach((_, at) => {
        expect(view?.clips[at + 1]).toBe(from.clips[at + 1]);
      });
    }),
  );
});

test('a patch that starts from another revision or lesson is not applied', () => {
  const [view] = fc.sample(arbitraryView, 1);
  if (!view) throw new Error('a sample is a view');
  const patch = buildPatch(view, { ...view, revision: 2 });
  expect(applyUpdate({ ...view, revision: 7 }, { kind: 'patch', patch })).toBeNull();
  expect(applyUpdate({ ...view, lesson: 'other' }, { kind: 'patch', patch })).toBeNull();
  expect(applyUpdate(null, { kind: 'patch', patch })).toBeNull();
});
