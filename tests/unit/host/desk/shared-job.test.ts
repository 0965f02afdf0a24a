import { describe, expect, test } from 'vitest';
import type { CallContext } from '../../../../src-core/host/desk/face.ts';
import { openSharedJob } from '../../../../src-core/host/desk/shared-job.ts';

const context = (controller = new AbortController()): CallContext => ({
  signal: controller.signal,
  onProgress: () => {},
});

/** Work that goes on until it is let go, and answers with how often it has been done. */
function openSlowJob() {
  let done = 0;
  const gates: (() => void)[] = [];
  const job = openSharedJob(async () => {
    await new Promise<void>((resolve) => gates.push(resolve));
    done += 1;
    return done;
  });
  const letGo = async () => {
    await expect.poll(() => gates.length).toBeGreaterThan(0);
    gates.shift()?.();
  };
  return { job, letGo };
}

describe('work that several faces wait for', () => {
  test('is done once for all that ask while it runs', async () => {
    const { job, letGo } = openSlowJob();
    const both = Promise.all([job.join(context()), job.join(context())]);
    await letGo();
    expect(await both).toEqual([1, 1]);
    expect(job.isRunning()).toBe(false);
  });

  test('is done once more where what it stands on changed meanwhile, and nobody is told of the first time', async () => {
    const { job, letGo } = openSlowJob();
    const told = job.join(context());
    await expect.poll(job.isRunning).toBe(true);
    job.renew();
    await letGo();
    await letGo();
    expect(await told).toBe(2);
  });

  test('is not begun by a change that nobody waits for', async () => {
    const { job, letGo } = openSlowJob();
    job.renew();
    expect(job.isRunning()).toBe(false);
    const told = job.join(context());
    await letGo();
    expect(await told).toBe(1);
  });

  test('ends when the last face leaves, and not before', async () => {
    const { job, letGo } = openSlowJob();
    const [one, other] = [new AbortController(), new AbortController()];
    const [first, second] = [job.join(context(one)), job.join(context(other))];
    one.abort(new Error('left'));
    await expect(first).rejects.toThrow('left');
    expect(job.isRunning()).toBe(true);
    other.abort(new Error('left too'));
    await expect(second).rejects.toThrow('left too');
    expect(job.isRunning()).toBe(false);
    await letGo();
  });
});
