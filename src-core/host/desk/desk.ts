import type { LessonId } from '../../contract/desk-view.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { DeskEvent } from '../../contract/events.ts';
import type { Problem } from '../../contract/problem.ts';
import { type Outcome, succeed } from '../../platform/outcome.ts';
import { buildArchiveCalls } from './archive-calls.ts';
import { buildBringCalls } from './bring-calls.ts';
import { buildDeskCalls } from './desk-calls.ts';
import type { DeskOptions, DeskParts } from './desk-parts.ts';
import { openDeskRecord } from './desk-record.ts';
import { buildEvidenceCalls } from './evidence-calls.ts';
import type { CallContext, FaceHost } from './face.ts';
import { openFolderTokens } from './folder-tokens.ts';
import { buildHandInCalls } from './hand-in-calls.ts';
import { openInboxes } from './inbox.ts';
import { buildKeepingCalls } from './keeping-calls.ts';
import { buildLessonCalls } from './lesson-calls.ts';
import { buildLookBackCalls } from './look-back-calls.ts';
import { openLessons } from './open-lessons.ts';
import { buildPlanningCalls } from './planning-calls.ts';
import { buildPrintCalls } from './print-calls.ts';
import { buildPupilCalls } from './pupil-calls.ts';
import { buildRosterCalls } from './roster-calls.ts';
import { buildSecondCalls } from './second-calls.ts';

/** Everything behind the faces of one process: open lessons, tokens, inboxes, and the calls on them. */
export interface Desk extends DeskParts, FaceHost {
  /** Opens the lesson that a folder named at the start holds; faces are told to open it first. */
  readonly openFirst: (folder: string) => Promise<Outcome<LessonId, Problem>>;
  readonly close: () => Promise<void>;
}

/** Opens a desk. Nothing is touched but its own memory. */
export async function openDesk(options: DeskOptions): Promise<Desk> {
  const listeners = new Set<(event: DeskEvent) => void>();
  const tell = (event: DeskEvent) => {
    for (const listener of listeners) listener(event);
  };
  const record = await openDeskRecord(options.home);
  const onAsked = (lesson: LessonId) => {
    tell({ kind: 'lesson-asked', lesson });
    options.onAsked?.(lesson);
  };
  const lessons = openLessons(record, { tell, onAsked });
  let first: LessonId | null = null;
  const parts: DeskParts = {
    options,
    record,
    tokens: openFolderTokens(),
    inboxes: openInboxes(),
    lessons,
    tell,
    getOpenFirst: () => first,
  };
  const handlers: Handlers<CallContext> = {
    ...buildDeskCalls(parts),
    ...buildLessonCalls(parts),
    ...buildEvidenceCalls(parts),
    ...buildBringCalls(parts),
    ...buildHandInCalls(parts),
    ...buildKeepingCalls(parts),
    ...buildPupilCalls(parts),
    ...buildSecondCalls(parts),
    ...buildPlanningCalls(parts),
    ...buildRosterCalls(parts),
    ...buildPrintCalls(parts),
    ...buildLookBackCalls(parts),
    ...buildArchiveCalls(parts),
  };
  return {
    ...parts,
    handlers,
    onFault: options.onFault,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    openFirst: async (folder) => {
      const opened = await lessons.openFolder(folder);
      if (!opened.ok) return opened;
      first = opened.value.lesson;
      onAsked(first);
      return succeed<LessonId, Problem>(first, opened.problems);
    },
    close: async () => {
      await parts.inboxes.closeAll();
      lessons.closeAll();
    },
  };
}
