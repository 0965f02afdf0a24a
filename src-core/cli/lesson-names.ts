export { getLessonNames, getPlanNames } from '../host/lesson-names.ts';
