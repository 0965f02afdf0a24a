import type { SheetColumn } from '../gradebook/grade-sheet.ts';
import { planSchema } from '../lesson/plan.ts';

/**
 * Columns as written on a command line: `Student ID=pupil,Score=points`. Null where a field is unknown or a head
 * is empty. Fields: see `gradeSheet.columns` in the plan.
 */
export function parseColumns(text: string): readonly SheetColumn[] | null {
  const columns = text.split(',').map((column) => {
    const at = column.lastIndexOf('=');
    const head = at < 0 ? column : column.slice(0, at);
    return { head: head.trim(), field: column.slice(at + 1).trim() };
  });
  const sheet = planSchema.shape.gradeSheet.safeParse({ columns });
  return sheet.success ? sheet.data.columns : null;
}
