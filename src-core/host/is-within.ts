import path from 'node:path';

/** Whether a path is another one or lies below it; both absolute, links not followed. */
export function isWithin(inner: string, outer: string): boolean {
  const relative = path.relative(outer, inner);
  return (
    relative === '' ||
    !(relative === '..' || relative.startsWith(`..${path.sep}`) || path.isAbsolute(relative))
  );
}
