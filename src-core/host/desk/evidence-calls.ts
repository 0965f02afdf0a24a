import { isMeasuredAnew, readEvidenceView } from '../../app/read-evidence-view.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import { fail, succeed } from '../../platform/outcome.ts';
import { type DeskParts, withMarking, withSession } from './desk-parts.ts';
import type { CallContext } from './face.ts';

/** The calls about what is seen in a lesson's clips. */
export function buildEvidenceCalls(
  desk: DeskParts,
): Pick<Handlers<CallContext>, 'watchClips' | 'readEvidence'> {
  return {
    watchClips: ({ lesson, since }, context) =>
      withMarking(desk, lesson, async (session) => {
        if (session.getView().reading.state !== 'read') return fail({ code: 'clips-unread' });
        await session.watching.join(context);
        return succeed({ update: session.getUpdate(since) });
      }),
    readEvidence: ({ lesson, clip, isOpened }) =>
      withSession(desk, lesson, async (session) => {
        if (isOpened) session.watching.prefer(clip);
        // What is there shows other lanes than the teacher's; better a moment later, and right.
        if (isMeasuredAnew(session.getGraded(), clip)) await session.settleMovements();
        const evidence = await readEvidenceView(session.getPorts(), session.getGraded(), clip, toBase64);
        return evidence ? succeed({ evidence }) : fail({ code: 'clip-unknown', clip });
      }),
  };
}

function toBase64(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('base64');
}
