import { ulid } from 'ulid';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { DecisionSender } from './lesson-desk.ts';

/** Sends decisions as they come, keeping none: what is not acknowledged before the page closes is lost. */
export function buildSender(client: DeskClient, lesson: LessonId, getWho: () => string): DecisionSender {
  return {
    send: async (call) => {
      const who = getWho();
      const { since } = call;
      const reply =
        call.name === 'decide'
          ? await client.request('decide', {
              lesson,
              since,
              who,
              entries: call.acts.map((act) => ({ id: ulid(), act })),
            })
          : await client.request(call.name, { lesson, since, who, id: ulid() });
      return reply.ok ? { ok: true, update: reply.value.update } : { ok: false, problems: reply.problems };
    },
  };
}
