import { expect, test } from 'vitest';
import { describeReading } from '../../../../renderer/features/bring-in/run-words.ts';

const job = (step: 'read' | 'cards', done: number) => ({
  progress: { step, done, total: 34 },
  secondsLeft: null,
  stop: () => {},
});

test('reading tells stamps first, then cards, and none of the cards before one was searched', () => {
  const stamps = { state: 'stamps', done: 0, total: 34 } as const;
  const cards = { state: 'cards', done: 0, total: 34 } as const;
  expect(describeReading(stamps, job('read', 12))).toMatchObject({ words: '12 of 34 dates read' });
  expect(describeReading(cards, job('read', 34))).toMatchObject({
    words: '34 dates read. Now the cards',
    share: 0,
  });
  expect(describeReading(cards, job('cards', 17))).toMatchObject({
    words: '17 of 34 clips searched for cards',
    share: 0.5,
  });
  expect(describeReading(cards, null)).toBeNull();
});
