/** The most signs that a folder's name is given of a title. */
const LONGEST_NAME = 80;

/** What no file system takes in a name. */
const BAD_SIGNS = /[\p{Cc}\\/:*?"<>|]+/gu;

/** The longest code that cards carry. */
const LONGEST_CODE = 12;

/** A folder's name for a lesson on a day, such as `2025-05-15 Harbour circuit`; every system takes it. */
export function nameLessonFolder(date: string, title: string): string {
  const plain = title.replace(BAD_SIGNS, ' ').replace(/\s+/g, ' ').trim().slice(0, LONGEST_NAME);
  return `${date} ${plain}`.replace(/[\s.]+$/, '').trim();
}

/** A code for a lesson's cards out of its title: capitals, digits and hyphens, such as `HARBOUR`. */
export function findLessonCode(title: string): string {
  const words = title
    .normalize('NFKD')
    .toUpperCase()
    .split(/[^A-Z0-9]+/)
    .filter((word) => word !== '');
  const [first = 'LESSON'] = words;
  return first.slice(0, LONGEST_CODE);
}
