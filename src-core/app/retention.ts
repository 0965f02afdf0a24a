export { buildKeepingText, isOverdue, type Keeping, parseKeeping } from '../lesson-file/keeping-file.ts';
