import type * as Engine from 'bullmq';
import type { Job, Queue, Worker } from 'bullmq';
import type { Redis } from 'ioredis';
import type { QueueProblem } from '../../contract/queue-problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { type ClipJob, type ClipJobEnd, clipJobEndSchema, nameClipJob } from './clip-job.ts';

/** Jobs on a Redis, from the side of who wants them done. */
export interface JobStore {
  /** Puts a job there; one of the same identity that is there already stays as it is. */
  readonly put: (job: ClipJob) => Promise<void>;
  /** How it stands; `gone`: it was never put, was taken away, or the store has lost it. */
  readonly find: (job: ClipJob) => Promise<'gone' | 'open' | ClipJobEnd>;
  /** Takes a job away, unless somebody is at work on it. */
  readonly remove: (job: ClipJob) => Promise<void>;
  /** Workers that are connected now. */
  readonly countWorkers: () => Promise<number>;
  readonly close: () => Promise<void>;
}

/**
 * Why a job goes back to be given to another. `stopped`: the worker ends. `unfit`: this worker cannot do it; that counts
 * as a try, and the worker sits out for a while, or it would be the first to take everything.
 */
export type Undone = 'stopped' | 'unfit';

/** How a worker does jobs. */
export interface JobWork {
  /** Jobs at once. */
  readonly atOnce: number;
  /** Does one job; `data` is whatever stood in the store under `name`. */
  readonly work: (name: string, data: unknown, isLastTry: boolean) => Promise<ClipJobEnd | Undone>;
  /** Hears once whenever the store stops answering; the worker waits for it. */
  readonly onSilence: () => void;
}

/** Plain, and over TLS. */
const SCHEMES = ['redis:', 'rediss:'];

/** The names of all keys at the Redis begin with these. */
const PREFIX = 'routemark';
const QUEUE_NAME = 'clips';

/** A worker that has not been heard of for this long is taken for dead, and its clip given to another. */
const DEAD_AFTER_MS = 5000;

/** Every so often, one of the workers looks for clips of dead ones. */
const LOOK_FOR_DEAD_MS = 2000;

/** A clip that so many workers died over is not given to one more: it may be the clip that kills them. */
const MOST_DEATHS = 8;

/** A clip that could not be decoded for reasons of the machine's is tried again, by whoever comes next. */
const MOST_TRIES = 3;

/** So long a job that was given back stays away: whoever gave it back sits out by then. */
const BACK_MS = 1000;

/** A worker that could not do a job takes no other for about as long as a clip takes one that can. */
const SIT_OUT_MS = 10_000;

/** An end that nobody fetched is not kept for longer. */
const KEPT_SECONDS = 3600;

/** Redis answers within this time, or there is none. */
const CONNECT_MS = 5000;

/** The store at an address such as `redis://127.0.0.1:6379`; `onSilence` hears once whenever it stops answering. */
export async function openJobStore(
  address: string,
  onSilence: () => void,
): Promise<Outcome<JobStore, QueueProblem>> {
  const link = await connect(address);
  if (!link.ok) return link;
  const { engine, connection } = link.value;
  const queue: Queue<ClipJob> = new engine.Queue(QUEUE_NAME, { connection, prefix: PREFIX });
  // Commands wait for the store to answer again, and so does whoever asked.
  queue.on('error', () => {});
  tellOfSilence(connection, onSilence);
  const getJob = (job: ClipJob): Promise<Job | undefined> => queue.getJob(nameClipJob(job));
  const ends = { removeOnComplete: { age: KEPT_SECONDS }, removeOnFail: { age: KEPT_SECONDS } };
  return succeed({
    put: async (job) => {
      await queue.add(job.kind, job, {
        ...ends,
        jobId: nameClipJob(job),
        attempts: MOST_TRIES,
        backoff: BACK_MS,
      });
    },
    find: async (job) => {
      const found = await getJob(job);
      if (!found) return 'gone';
      return found.finishedOn === undefined ? 'open' : readEnd(found);
    },
    remove: async (job) => {
      await (await getJob(job))?.remove().catch(() => {});
    },
    countWorkers: () => queue.getWorkersCount(),
    close: async () => {
      await queue.close();
      connection.disconnect();
    },
  });
}

function readEnd({ returnvalue, failedReason }: Job): ClipJobEnd {
  const end = clipJobEndSchema.safeParse(returnvalue);
  if (end.success) return end.data;
  return { problems: [{ code: 'analysis-failed', detail: failedReason ?? 'no answer came back' }] };
}

/** Starts to do jobs of the store at this address. The value ends that; what is under way is given to others. */
export async function startJobWorker(
  address: string,
  { atOnce, work, onSilence }: JobWork,
): Promise<Outcome<{ readonly close: () => Promise<void> }, QueueProblem>> {
  const link = await connect(address);
  if (!link.ok) return link;
  const { engine, connection } = link.value;
  let sittingOut: NodeJS.Timeout | undefined;
  const sitOut = async () => {
    clearTimeout(sittingOut);
    sittingOut = setTimeout(() => worker.resume(), SIT_OUT_MS);
    await worker.pause(true);
  };
  const process = async (job: Job, token?: string): Promise<ClipJobEnd> => {
    const end = await work(job.id ?? '', job.data, job.attemptsMade + 1 >= (job.opts.attempts ?? 1));
    if (end === 'unfit') {
      await sitOut();
      throw new Error('to be given to another worker');
    }
    if (end !== 'stopped') return end;
    await job.moveToWait(token);
    throw new engine.WaitingError();
  };
  const worker: Worker = new engine.Worker(QUEUE_NAME, process, {
    connection,
    prefix: PREFIX,
    concurrency: atOnce,
    lockDuration: DEAD_AFTER_MS,
    stalledInterval: LOOK_FOR_DEAD_MS,
    maxStalledCount: MOST_DEATHS,
  });
  worker.on('error', () => {});
  tellOfSilence(connection, onSilence);
  return succeed({
    close: async () => {
      clearTimeout(sittingOut);
      await worker.close();
      connection.disconnect();
    },
  });
}

/** Each try to reach it again fails with an error; what is lost is told once, until it is there again. */
function tellOfSilence(connection: Redis, onSilence: () => void): void {
  let isTold = false;
  connection.on('error', () => {
    if (!isTold) onSilence();
    isTold = true;
  });
  connection.on('ready', () => {
    isTold = false;
  });
}

interface Link {
  readonly engine: typeof Engine;
  readonly connection: Redis;
}

/** Loads the engine, which is there only where it was installed, and makes sure that a Redis answers. */
async function connect(address: string): Promise<Outcome<Link, QueueProblem>> {
  const url = URL.canParse(address) ? new URL(address) : null;
  if (!url || !SCHEMES.includes(url.protocol) || url.hostname === '')
    return fail<QueueProblem>({ code: 'queue-address-odd' });
  const packages = await loadPackages();
  if (!packages) return fail<QueueProblem>({ code: 'queue-engine-missing' });
  const connection = new packages.Client(address, { maxRetriesPerRequest: null, connectTimeout: CONNECT_MS });
  const failure = await waitUntilReady(connection);
  if (failure !== null) {
    connection.disconnect();
    return fail<QueueProblem>({ code: 'queue-unreachable', host: url.host, detail: failure });
  }
  return succeed<Link, QueueProblem>({ engine: packages.engine, connection });
}

async function loadPackages() {
  try {
    const [engine, { Redis: Client }] = await Promise.all([import('bullmq'), import('ioredis')]);
    return { engine, Client };
  } catch {
    return null;
  }
}

/** Null once it answers; else what went wrong first. */
function waitUntilReady(connection: {
  readonly once: (event: 'ready' | 'error', listener: (error?: Error) => void) => unknown;
}): Promise<string | null> {
  return new Promise((resolve) => {
    connection.once('ready', () => resolve(null));
    connection.once('error', (error) => resolve(error?.message ?? ''));
  });
}
