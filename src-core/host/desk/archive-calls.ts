import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import type { BadArchive, FoundArchive } from '../../contract/archive-calls.ts';
import type { CallOutput } from '../../contract/calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { openArchive } from '../archive/read-archive.ts';
import { restoreArchive } from '../archive/restore-archive.ts';
import { writeArchive } from '../archive/write-archive.ts';
import { findFreePath } from '../free-name.ts';
import { toPlainName } from '../plain-name.ts';
import { type DeskParts, withLesson } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import { isPlainPath } from './inbox.ts';

/** The calls with which a lesson is kept in an archive and brought back from one. */
export function buildArchiveCalls(
  desk: DeskParts,
): Pick<Handlers<CallContext>, 'keepLesson' | 'listArchives' | 'restoreLesson'> {
  return {
    keepLesson: ({ lesson: id, into: token, withClips }, { signal, onProgress }) =>
      withLesson(desk, id, async (session) => {
        const into = desk.tokens.find(token);
        if (into === null) return fail({ code: 'folder-unknown' });
        const { title, className, date } = session.getView().plan.lesson;
        const file = findFreePath(
          into,
          [date, toPlainName(title, ' '), toPlainName(className, ' ')].join(' ').slice(0, 120).trim(),
          ENDING,
        );
        const kept = await writeArchive(
          {
            folder: session.folder,
            file,
            lesson: { title, className, date },
            withClips,
            clipsFolder: session.getClipsFolder(),
            made: new Date().toISOString(),
          },
          { signal, onProgress },
        );
        return kept.ok ? succeed({ path: file, ...kept.value }, kept.problems) : kept;
      }),
    listArchives: async ({ folder: token }) => {
      const folder = desk.tokens.find(token);
      return folder === null ? fail({ code: 'folder-unknown' }) : listArchives(folder);
    },
    restoreLesson: async ({ folder: token, name, onlyWhole }, { signal, onProgress }) => {
      const folder = desk.tokens.find(token);
      if (folder === null) return fail({ code: 'folder-unknown' });
      const stem = name.slice(0, -ENDING.length);
      if (!isPlainPath(stem)) return fail({ code: 'file-name-bad', path: name });
      const made = findFreePath(folder, stem, '');
      const order = { file: path.join(folder, name), folder: made, onlyWhole };
      const restored = await restoreArchive(order, { signal, onProgress });
      if (!restored.ok) return restored;
      const session = await desk.lessons.openFolder(made);
      if (!session.ok) return session;
      return succeed<CallOutput<'restoreLesson'>, Problem>(
        { update: session.value.getUpdate(null) },
        restored.problems,
      );
    },
  };
}

const ENDING = '.zip';

async function listArchives(folder: string): Promise<Outcome<CallOutput<'listArchives'>, Problem>> {
  const all = await readdir(folder).catch(() => null);
  if (all === null) return fail({ code: 'folder-unreadable', path: folder });
  const archives: FoundArchive[] = [];
  const bad: BadArchive[] = [];
  for (const name of all.filter((one) => one.toLowerCase().endsWith(ENDING)).sort()) {
    const file = path.join(folder, name);
    const archive = await openArchive(file);
    if (!archive.ok) {
      bad.push(...archive.problems.map((problem) => ({ name, problem })));
      continue;
    }
    archive.value.close();
    const { lesson, holdsClips } = archive.value.manifest;
    const { size } = await stat(file);
    archives.push({ name, ...lesson, holdsClips, bytes: size });
  }
  return succeed({ archives, bad: bad.filter(({ problem }) => problem.code !== 'archive-not-ours') });
}
