import type { LessonView } from './lesson-view.ts';

/** The lists of a {@link LessonView} whose items have keys of their own. */
const KEYED = {
  squads: ({ code }: LessonView['squads'][number]) => code,
  clips: ({ id }: LessonView['clips'][number]) => id,
  flags: ({ key }: LessonView['flags'][number]) => key,
  squadScores: ({ squad }: LessonView['squadScores'][number]) => squad,
  pupilScores: ({ pupil }: LessonView['pupilScores'][number]) => pupil.id,
} as const;

type ListName = keyof typeof KEYED;

/** How one list changed between two revisions. */
export interface ListPatch<Item> {
  /** Keys of all items in order; null: the same items in the same order as before. */
  readonly order: readonly string[] | null;
  /** Items that are new or differ. */
  readonly put: readonly Item[];
}

/** What changed between two revisions of one lesson. */
export interface LessonPatch {
  readonly lesson: string;
  readonly from: number;
  readonly to: number;
  /** Parts without keys, whole where they changed. */
  readonly parts: Partial<Omit<LessonView, ListName | 'revision' | 'lesson'>>;
  readonly lists: { readonly [List in ListName]?: ListPatch<LessonView[List][number]> };
}

/** A lesson's present state: whole, or as what changed since the revision that the page has. */
export type LessonUpdate =
  | { readonly kind: 'whole'; readonly view: LessonView }
  | { readonly kind: 'patch'; readonly patch: LessonPatch };

/** What leads from one view of a lesson to a later one. */
export function buildPatch(from: LessonView, to: LessonView): LessonPatch {
  const parts: Record<string, unknown> = {};
  const lists: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(to)) {
    if (name === 'revision' || name === 'lesson') continue;
    if (isListName(name)) {
      const patch = buildListPatch(from[name], to[name], KEYED[name] as (item: object) => string);
      if (patch) lists[name] = patch;
    } else if (!isSame(from[name as keyof LessonView], value)) parts[name] = value;
  }
  return { lesson: to.lesson, from: from.revision, to: to.revision, parts, lists } as LessonPatch;
}

/**
 * The view that an update leads to. What did not change stays the very same object, so that a page can tell by
 * identity. Null where a patch does not start from this view: ask for the whole.
 */
export function applyUpdate(view: LessonView | null, update: LessonUpdate): LessonView | null {
  if (update.kind === 'whole') return update.view;
  const { patch } = update;
  if (!view || view.lesson !== patch.lesson || view.revision !== patch.from) return null;
  const lists = Object.entries(patch.lists).map(([name, list]) => {
    if (!isListName(name) || !list) return [name, undefined];
    const getKey = KEYED[name] as (item: object) => string;
    return [name, applyListPatch<object>(view[name], list as ListPatch<object>, getKey)];
  });
  return { ...view, ...patch.parts, ...Object.fromEntries(lists), revision: patch.to } as LessonView;
}

function isListName(name: string): name is ListName {
  return Object.hasOwn(KEYED, name);
}

function buildListPatch<Item extends object>(
  from: readonly Item[],
  to: readonly Item[],
  getKey: (item: Item) => string,
): ListPatch<Item> | null {
  const before = new Map(from.map((item) => [getKey(item), item]));
  const put = to.filter((item) => !isSame(before.get(getKey(item)), item));
  const order = to.map(getKey);
  const isMoved = from.length !== to.length || from.some((item, at) => getKey(item) !== order[at]);
  return isMoved || put.length > 0 ? { order: isMoved ? order : null, put } : null;
}

function applyListPatch<Item extends object>(
  from: readonly Item[],
  { order, put }: ListPatch<Item>,
  getKey: (item: Item) => string,
): readonly Item[] {
  const items = new Map([...from, ...put].map((item) => [getKey(item), item]));
  return (order ?? from.map(getKey)).flatMap((key) => items.get(key) ?? []);
}

/** Deep equality of plain data; objects that are the same one are not looked into. */
export function isSame(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length &&
    keys.every(
      (key) =>
        Object.hasOwn(other, key) &&
        isSame((one as Record<string, unknown>)[key], (other as Record<string, unknown>)[key]),
    )
  );
}
