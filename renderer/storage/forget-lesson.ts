import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { PageDatabase } from './page-database.ts';

/** Takes everything of a lesson out of the page's own storage, for the lesson itself was deleted. */
export async function forgetLesson(database: PageDatabase, lesson: LessonId): Promise<void> {
  await database.lessons.delete(lesson);
  await database.outbox.where('lesson').equals(lesson).delete();
  // Drafts are named after what they belong to: `note:<lesson>:<clip>`, `mapping:<lesson>`.
  await database.drafts.filter(({ key }) => key.split(':')[1] === lesson).delete();
}
