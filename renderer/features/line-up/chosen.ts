import type { ClipView, FlagView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import { isOpen, listOpenFlags } from '../../client/flag-step.ts';
import type { LoomColumn, Ticket } from './loom.ts';

/** What the teacher has before them. */
export interface Chosen {
  readonly clip: ClipView | null;
  readonly ticket: Ticket | null;
  /** Null: none is asked for, or the clip has none. */
  readonly flag: FlagView | null;
}

/** The flag or clip that is asked for by key or id; without either, the first open flag. */
export function findChosen(view: LessonView, columns: readonly LoomColumn[], target: string | null): Chosen {
  const open = listOpenFlags(view, 'line-up');
  const asked = view.clips.find(({ id }) => id === target) ?? null;
  const flag = asked ? findFlagOf(view, asked) : (findFlag(view, target) ?? open[0] ?? null);
  const clip = asked ?? view.clips.find(({ id }) => id === flag?.flag.clip) ?? null;
  const tickets = columns.flatMap((column) => column.tickets);
  return { clip, flag, ticket: tickets.find((ticket) => ticket.clip.id === clip?.id) ?? null };
}

/** The open flag after the one that is chosen, round and round, never that one itself. Null: no other is open. */
export function findNextFlag(view: LessonView, chosen: FlagView | null): FlagView | null {
  const open = listOpenFlags(view, 'line-up');
  const at = open.findIndex(({ key }) => key === chosen?.key);
  const next = open[(at + 1) % Math.max(1, open.length)] ?? null;
  return next?.key === chosen?.key ? null : next;
}

function findFlag(view: LessonView, key: string | null): FlagView | null {
  return view.flags.find((entry) => entry.key === key) ?? null;
}

function findFlagOf(view: LessonView, clip: ClipView): FlagView | null {
  const own = view.flags.filter(({ key }) => clip.flags.includes(key));
  return own.find(isOpen) ?? own[0] ?? null;
}
