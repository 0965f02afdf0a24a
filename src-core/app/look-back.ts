export { buildCsv } from '../gradebook/csv.ts';
export { buildSummaryText, parseSummary, type SummarySource } from '../lesson-file/summary-file.ts';
export { buildLookBack, listSections } from '../marking/look-back/look-back.ts';
export { buildFigures } from './build-figures.ts';
export { summariseLesson } from './summarise-lesson.ts';
