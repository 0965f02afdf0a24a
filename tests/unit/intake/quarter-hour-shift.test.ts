import { describe, expect, test } from 'vitest';
import { findQuarterHourShift } from '../../../src-core/intake/quarter-hour-shift.ts';

const at = (text: string) => Date.parse(`2026-03-02T${text}:00Z`);
const period = (from: string, to: string) => ({ startMs: at(from), endMs: at(to) });
const FIRST = period('09:00', '09:45');
const LESSON = ['09:03', '09:11', '09:19', '09:27', '09:35', '09:42'];
const off = (minutes: number) => LESSON.map((text) => at(text) + minutes * 60_000);

describe('clips that lie outside the timetable', () => {
  test.each([300, -300, 345, -840, 60, -90])('by %i minutes are brought back by as much', (minutes) => {
    expect(findQuarterHourShift(off(minutes), [FIRST])).toBe(-minutes * 60);
  });

  test('are brought to the whole hour where several quarters fit as well', () => {
    const short = ['09:14', '09:18', '09:22'].map((text) => at(text) + 5 * 3_600_000);
    expect(findQuarterHourShift(short, [FIRST])).toBe(-5 * 3600);
  });

  test('are brought back though one in ten is left over from elsewhere', () => {
    const tenth = Array.from({ length: 9 }, (_, index) => at('14:02') + index * 5 * 60_000);
    expect(findQuarterHourShift([...tenth, at('03:00')], [FIRST])).toBe(-5 * 3600);
  });
});

describe('nothing is proposed', () => {
  test('where the clips fit as they are', () => {
    expect(findQuarterHourShift(off(0), [FIRST])).toBeNull();
  });

  test('where half of them do', () => {
    expect(findQuarterHourShift([...off(0), ...off(300)], [FIRST])).toBeNull();
  });

  test('where two periods of the day would fit as well', () => {
    expect(findQuarterHourShift(off(300), [FIRST, period('11:00', '11:45')])).toBeNull();
  });

  test('where no shift brings them together', () => {
    expect(findQuarterHourShift([at('01:00'), at('06:00'), at('13:00'), at('22:00')], [FIRST])).toBeNull();
  });

  test('where they lie farther off than any zone', () => {
    expect(findQuarterHourShift(off(15 * 60), [FIRST])).toBeNull();
    expect(findQuarterHourShift(off(37 * 24 * 60), [FIRST])).toBeNull();
  });

  test('where the tablet is slow by 22 minutes, which is no zone, and a long run fits no quarter', () => {
    const full = ['09:00', '09:15', '09:30', '09:44'].map((text) => at(text) - 22 * 60_000 + 5 * 3_600_000);
    expect(findQuarterHourShift(full, [FIRST])).toBeNull();
  });

  test('from one clip, from none, and without periods', () => {
    expect(findQuarterHourShift([at('14:10')], [FIRST])).toBeNull();
    expect(findQuarterHourShift([], [FIRST])).toBeNull();
    expect(findQuarterHourShift(off(300), [])).toBeNull();
  });
});
