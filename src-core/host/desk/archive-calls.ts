import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import type { FoundArchive } from '../../contract/archive-calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import { fail, succeed } from '../../platform/outcome.ts';
import { openArchive } from '../archive/read-archive.ts';
import { restoreArchive } from '../archive/restore-archive.ts';
import { writeArchive } from '../archive/write-archive.ts';
import { type DeskParts, withLesson } from './desk-parts.ts';
import type { CallContext } from './face.ts';

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
        const file = path.join(into, nameArchive(`${date} ${title} ${className}`));
        const kept = await writeArchive(
          {
            folder: session.folder,
            file,
            lesson: { title, className, date },
            withClips,
            made: new Date().toISOString(),
          },
          { signal, onProgress },
        );
        return kept.ok ? succeed({ path: file, ...kept.value }, kept.problems) : kept;
      }),
    listArchives: async ({ folder: token }) => {
      const folder = desk.tokens.find(token);
      return folder === null
        ? fail({ code: 'folder-unknown' })
        : succeed({ archives: await listArchives(folder) });
    },
    restoreLesson: async ({ folder: token, name }, { signal, onProgress }) => {
      const folder = desk.tokens.find(token);
      if (folder === null) return fail({ code: 'folder-unknown' });
      const made = path.join(folder, name.replace(/\.zip$/i, ''));
      const order = { file: path.join(folder, name), folder: made, onlyWhole: false };
      const restored = await restoreArchive(order, { signal, onProgress });
      if (!restored.ok) return restored;
      const session = await desk.lessons.openFolder(made);
      return session.ok ? succeed({ update: session.value.getUpdate(null) }) : session;
    },
  };
}

function nameArchive(words: string): string {
  const plain = words.normalize('NFC').replace(/[^\p{L}\p{N} -]+/gu, '-');
  return `${plain.replace(/^[- ]+|[- ]+$/g, '').slice(0, 120)}.zip`;
}

/** Other zip files, and archives that cannot be read, are passed over. */
async function listArchives(folder: string): Promise<FoundArchive[]> {
  const names = (await readdir(folder).catch(() => [])).filter((name) => /\.zip$/i.test(name)).sort();
  const found: FoundArchive[] = [];
  for (const name of names) {
    const file = path.join(folder, name);
    const archive = await openArchive(file);
    if (!archive.ok) continue;
    archive.value.close();
    const { lesson, holdsClips } = archive.value.manifest;
    const { size } = await stat(file);
    found.push({ name, ...lesson, holdsClips, bytes: size });
  }
  return found;
}
