export {
  type DeletionEntry,
  type HeldFile,
  type HoldingScope,
  type Holdings,
  parseDeletionLog,
} from '../lesson-file/deletion-log.ts';
export { buildKeepingText, isOverdue, parseKeeping } from '../lesson-file/keeping-file.ts';
export {
  findLessonPart,
  LESSON_PARTS,
  type LessonPart,
  listLessonParts,
} from '../lesson-file/lesson-parts.ts';
