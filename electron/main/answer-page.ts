import type { OpenLessons } from '../../src-core/host/desk/open-lessons.ts';
import { answerMedia } from '../../src-core/host/media/answer-media.ts';
import type { PageFiles } from '../../src-core/host/page-files.ts';
import { mayNavigate } from './locks.ts';

/**
 * Answers requests of our own scheme: the built page's files, and clips by opaque ids with byte ranges. Ranges are
 * answered here, with 206: handing files over by `net.fetch` plays them but does not seek (electron/electron #38749).
 */
export async function answerPage(
  request: Request,
  { files, lessons }: { readonly files: PageFiles; readonly lessons: OpenLessons },
): Promise<Response> {
  const isRead = request.method === 'GET' || request.method === 'HEAD';
  if (!isRead || !mayNavigate(request.url)) return new Response(null, { status: 403 });
  const { pathname } = new URL(request.url);
  return (
    (await answerMedia(lessons, request)) ??
    (await files.answer(pathname)) ??
    new Response(null, { status: 404 })
  );
}
