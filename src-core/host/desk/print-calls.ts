import path from 'node:path';
import { draftPack } from '../../app/print-pack.ts';
import type { CallOutput, CheckedInput } from '../../contract/calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome } from '../../platform/outcome.ts';
import { printPack } from '../pdf/print-pack.ts';
import { type DeskParts, withLessonThere } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import { isWithin } from './folder-tokens.ts';
import { findRealFolder } from './lesson-folder.ts';
import type { LessonSession } from './lesson-session.ts';

/** The call that draws the print pack into files. */
export function buildPrintCalls(desk: DeskParts): Pick<Handlers<CallContext>, 'printPack'> {
  return {
    printPack: (order, context) =>
      withLessonThere(desk, order.lesson, (session) => {
        const { into } = order;
        const folder = into === null ? path.join(session.folder, 'print') : desk.tokens.find(into);
        return print(session, { ...order, folder }, context);
      }),
  };
}

async function print(
  session: LessonSession,
  { folder, replace, ...order }: CheckedInput<'printPack'> & { readonly folder: string | null },
  context: CallContext,
): Promise<Outcome<CallOutput<'printPack'>, Problem>> {
  if (folder === null) return fail({ code: 'folder-unknown' });
  // Nothing but clips is put among the clips, for what lies there is read as one.
  const clips = (await findRealFolder(session.getClipsFolder())) ?? session.getClipsFolder();
  if (isWithin(folder, clips)) return fail({ code: 'file-name-bad', path: folder });
  const { plan, pupils } = session.getView();
  return printPack(draftPack({ plan, pupils }, order), { folder, replace }, context);
}
