import { useLiveQuery } from 'dexie-react-hooks';
import { useCallback, useState } from 'react';
import { type Draft, openPageDatabase, type PageDatabase } from './page-database.ts';

let opened: PageDatabase | null = null;

/** The page's storage, opened on first use and the same for all of the page. */
export function getPageDatabase(): PageDatabase {
  opened ??= openPageDatabase();
  return opened;
}

/** A text between the first letter and the decision, and the ways to change or forget it. */
export interface DraftText {
  /** What was typed, or null where nothing is being typed: show what was decided. */
  readonly text: string | null;
  readonly write: (text: string) => void;
  /** Forgets it: it was decided, or given up. */
  readonly drop: () => void;
}

/** A text that outlives the page until it is decided, and that other windows see; `key` says what it belongs to. */
export function useDraft(key: string): DraftText {
  const { drafts } = getPageDatabase();
  // What is typed here is shown from here: the storage answers later than the next key comes.
  const [typed, setTyped] = useState<{ readonly key: string; readonly text: string | null } | null>(null);
  // Forgotten with its key: whoever comes back to it may have typed elsewhere meanwhile.
  if (typed && typed.key !== key) setTyped(null);
  // All of them, for they are few: to ask for each anew would cost every clip that comes onto the desk.
  const kept = useLiveQuery(() => drafts.toArray().catch((): Draft[] => []), [])?.find(
    (one) => one.key === key,
  );
  const write = useCallback(
    (text: string) => {
      setTyped({ key, text });
      drafts.put({ key, text }).catch(() => {});
    },
    [drafts, key],
  );
  const drop = useCallback(() => {
    setTyped({ key, text: null });
    drafts.delete(key).catch(() => {});
  }, [drafts, key]);
  return { text: typed?.key === key ? typed.text : (kept?.text ?? null), write, drop };
}
