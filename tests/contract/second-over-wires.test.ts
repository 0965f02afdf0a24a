import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { decide, follow, type Open, openOver, who } from './open-over.ts';
import { WIRES } from './open-wires.ts';

/** A second marking of the small lesson, its clips read. */
async function openSecond(first: Open, name: string): Promise<Open> {
  const { client, view, test: desk } = first;
  const opened = await client.request('openSecondMarking', { lesson: view.lesson, who: name });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const { lesson } = opened.value;
  const read = await client.request('readClips', { lesson, since: null });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { test: desk, client, view: follow(null, read.value.update) };
}

const confirm = (clip: string | undefined, place: boolean, together: boolean) => ({
  kind: 'clip-confirmed',
  clip,
  answers: { place, together },
});

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('a second marking shows nothing of the first, leaves it as it is, and is compared with it', async () => {
    const first = await openOver(wire);
    const [one, other] = first.view.clips;
    await decide(first, confirm(one?.id, true, true), {
      kind: 'clip-noted',
      clip: one?.id,
      text: 'well done',
    });
    await decide(first, confirm(other?.id, true, true));
    const second = await openSecond(first, 'R. Skerry');
    expect(second.view).toMatchObject({ second: { who: 'R. Skerry', of: first.view.lesson } });
    expect(second.view.clips).toHaveLength(6);
    expect(second.view.clips[0]).toMatchObject({ note: null, points: 0 });
    expect(second.view.clips.flatMap(({ criteria }) => criteria ?? []).some((mark) => mark.confirmed)).toBe(
      false,
    );
    const before = await readFile(path.join(first.test.lessonFolder, 'marks.jsonl'));
    await decide(second, confirm(one?.id, true, false));
    await decide(second, confirm(other?.id, true, true));
    expect(await readFile(path.join(first.test.lessonFolder, 'marks.jsonl'))).toEqual(before);
    expect(await readdir(path.join(first.test.lessonFolder, 'second-marks'))).toEqual(['r-skerry.jsonl']);
    const { lesson } = first.view;
    const compared = await first.client.request('compareMarkings', { lesson });
    if (!compared.ok) throw new Error(JSON.stringify(compared.problems));
    const [marking] = compared.value.markings;
    expect(marking).toMatchObject({ who, problems: [] });
    expect(marking?.comparison.subjects[1]).toMatchObject({ agreement: { pairs: 2, same: 1, share: 0.5 } });
    expect(marking?.comparison.clips).toEqual([
      { clip: one?.id, differing: [{ code: 'together', first: true, second: false }] },
    ]);
  });

  test('a second marking can do nothing but mark, and goes on where it was', async () => {
    const first = await openOver(wire);
    const second = await openSecond(first, 'R. Skerry');
    const { lesson } = second.view;
    const refused = { ok: false, problems: [{ code: 'second-marking-only' }] };
    const what = { kind: 'csv', columns: null } as const;
    expect(await first.client.request('draftHandIn', { lesson, what, evenWithOpenFlags: true })).toEqual(
      refused,
    );
    expect(await first.client.request('readHoldings', { lesson, scope: 'all' })).toEqual(refused);
    await expect(
      decide(second, { kind: 'attendance-set', pupil: 'k-1', attendance: 'absent', arrived: null }),
    ).rejects.toThrow('second-marking-only');
    await decide(second, { kind: 'clip-noted', clip: second.view.clips[0]?.id, text: 'late start' });
    const again = await openSecond(first, 'r skerry');
    expect([again.view.lesson, again.view.clips[0]?.note]).toEqual([lesson, 'late start']);
    const nameless = await first.client.request('openSecondMarking', {
      lesson: first.view.lesson,
      who: '??',
    });
    expect(nameless).toEqual({ ok: false, problems: [{ code: 'marker-name-bad' }] });
  });
});
