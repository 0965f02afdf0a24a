import { describe, expect, test } from 'vitest';
import { withPupilWords } from '../../../../src-core/lesson/roster/pupil-words.ts';
import { parseRoster } from '../../../../src-core/lesson/roster.ts';
import { parsePlan } from '../../../../src-core/lesson-file/plan-file.ts';
import { getRawPlan } from '../small-plan.ts';

const ROSTER = 'id,given,family,squad,Locker\nk-1,Odda,Quill,teal,7\nk-2,Bram,Thistle,plum,8\n';

function read(text: string) {
  const plan = parsePlan(JSON.stringify(getRawPlan()));
  if (!plan.ok) throw new Error('the plan reads');
  return parseRoster(text, plan.value);
}

describe('a word about pictures', () => {
  test('is written for one pupil, and all else stays, the teacher’s own columns too', () => {
    expect(withPupilWords(ROSTER, 'k-2', { consent: 'withheld' })).toBe(
      'id,given,family,squad,Locker,consent\nk-1,Odda,Quill,teal,7,\nk-2,Bram,Thistle,plum,8,no\n',
    );
  });

  test('can be taken back, and the other word is left as it was', () => {
    const noted = withPupilWords(ROSTER, 'k-1', { consent: 'given', stills: false }) ?? '';
    expect(read(noted).pupils[0]).toMatchObject({ consent: 'given', stills: false });
    const back = read(withPupilWords(noted, 'k-1', { consent: null }) ?? '').pupils[0];
    expect(back).toMatchObject({ stills: false });
    expect(back).not.toHaveProperty('consent');
  });

  test('of nobody in the roster is none', () => {
    expect(withPupilWords(ROSTER, 'k-9', { stills: false })).toBeNull();
  });

  test.each([
    ['yes', { consent: 'given', stills: true }, 0],
    ['No', { consent: 'withheld', stills: false }, 0],
    ['', { stills: true }, 0],
    ['verbally', { consent: 'withheld', stills: false }, 1],
  ] as const)('“%s” under consent is read so that nobody is shown by mistake', (word, pupil, slips) => {
    const { pupils, problems } = read(`id,given,family,squad,consent\nk-1,Odda,Quill,teal,${word}\n`);
    expect(pupils[0]).toMatchObject(pupil);
    expect(problems).toHaveLength(slips);
  });
});
