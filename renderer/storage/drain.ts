import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import type { LessonCopy } from './lesson-copy.ts';
import type { Outbox } from './outbox.ts';
import type { OutboxAct, OutboxEntry } from './outbox-entry.ts';

/** How a drain ended: nothing is left, or why something still waits. */
export type DrainEnd =
  /** `idle`: there was nothing to send, so the host was not asked. */
  | { readonly kind: 'clear' | 'idle' }
  /** The host does not answer. */
  | { readonly kind: 'away' }
  /** The host answers and cannot record, for a reason that may pass: a full disk, a stick pulled out. */
  | { readonly kind: 'held'; readonly problems: readonly Problem[] };

/** What a drain works with. */
export interface DrainParts {
  readonly client: DeskClient;
  readonly lesson: LessonId;
  readonly outbox: Outbox;
  readonly copy: LessonCopy;
  /** Hears of entries that the host will never record. */
  readonly onRefused: (problems: readonly Problem[]) => void;
}

/** Entries sent in one request at most. */
const MOST_AT_ONCE = 200;

/** Problems that lie in an entry itself: sending it again will not help. */
const HOPELESS: readonly Problem['code'][] = ['call-malformed', 'decision-meaningless'];

/** Undoing what another window has undone already asks for nothing more. */
const IDLE: readonly Problem['code'][] = ['nothing-to-undo', 'nothing-to-redo'];

/**
 * Sends what waits, in order, until nothing does or the host says otherwise. An entry that can never be recorded is
 * found by sending singly, taken out and told; the others go on.
 */
export async function drainOutbox(parts: DrainParts): Promise<DrainEnd> {
  let most = MOST_AT_ONCE;
  let wasOpened = false;
  let end: DrainEnd = { kind: 'idle' };
  for (;;) {
    const batch = takeBatch(await parts.outbox.readUnsent(), most);
    if (batch.length === 0) return end;
    const problems = (await send(parts, batch)) ?? [];
    const next = chooseNext(problems, batch.length, wasOpened);
    if (next === 'away') return { kind: 'away' };
    if (next === 'hold') return { kind: 'held', problems };
    await act(parts, next, { batch, problems });
    end = { kind: 'clear' };
    wasOpened ||= next === 'reopen';
    most = next === 'singly' ? 1 : MOST_AT_ONCE;
  }
}

async function act(
  { outbox, copy, onRefused }: DrainParts,
  next: Next,
  { batch, problems }: { readonly batch: readonly OutboxEntry[]; readonly problems: readonly Problem[] },
): Promise<void> {
  if (next === 'reopen') await copy.catchUp();
  if (next === 'drop' || next === 'refuse') await outbox.remove(batch.map(({ id }) => id));
  if (next === 'refuse') onRefused(problems);
}

type Next = 'go-on' | 'away' | 'hold' | 'reopen' | 'drop' | 'refuse' | 'singly';

function chooseNext(problems: readonly Problem[], size: number, wasOpened: boolean): Next {
  if (problems.length === 0) return 'go-on';
  const has = (codes: readonly Problem['code'][]) => problems.some(({ code }) => codes.includes(code));
  if (has(['desk-unreachable'])) return 'away';
  if (has(['lesson-unknown']) && !wasOpened) return 'reopen';
  if (has(IDLE)) return 'drop';
  if (has(HOPELESS)) return size > 1 ? 'singly' : 'refuse';
  return 'hold';
}

/** The first entries that can go in one request: acts by one person, or a single undo or redo. */
function takeBatch(entries: readonly OutboxEntry[], most: number): readonly OutboxEntry[] {
  const [first] = entries;
  if (!first || isWish(first.act)) return first ? [first] : [];
  const end = entries.findIndex(({ act, who }) => isWish(act) || who !== first.who);
  return entries.slice(0, Math.min(end < 0 ? entries.length : end, most));
}

function isWish(act: OutboxAct): act is 'undo' | 'redo' {
  return typeof act === 'string';
}

/** Null: recorded, and the copy shows it. */
async function send(
  { client, lesson, outbox, copy }: DrainParts,
  batch: readonly OutboxEntry[],
): Promise<readonly Problem[] | null> {
  const [first] = batch;
  if (!first) return null;
  const since = copy.get()?.revision ?? null;
  const { who, id, act } = first;
  const reply = isWish(act)
    ? await client.request(act, { lesson, since, who, id })
    : await client.request('decide', {
        lesson,
        since,
        who,
        entries: batch.flatMap((entry) => (isWish(entry.act) ? [] : [{ id: entry.id, act: entry.act }])),
      });
  if (!reply.ok) return reply.problems;
  const { update } = reply.value;
  const revision = update.kind === 'whole' ? update.view.revision : update.patch.to;
  // Marked before the copy moves on: an entry is never folded into a view that has it already.
  const marked = outbox.acknowledge(
    batch.map((entry) => entry.id),
    revision,
  );
  if (!copy.take(update)) await copy.catchUp();
  await marked;
  return null;
}
