/** A camera file's running number — DCF 2.0 (JEITA CP-3461): four characters, then 0001 to 9999. */
export interface DcfNumber {
  /** The four characters before the number, capital, such as `IMG_`. */
  readonly series: string;
  /** 1 to 9999. */
  readonly value: number;
  /** The number of the folder it lies in, 100 to 999; null where the folder is no camera's. */
  readonly folder: number | null;
  /** `IMG_E0412`: the edited copy of `IMG_0412` (iOS, common practice); same series, same number. */
  readonly isEdited: boolean;
}

const NAME = /^([0-9A-Z_]{4})(\d{4})\.[0-9A-Z]+$/;
const EDITED_NAME = /^IMG_E(\d{4})\.[0-9A-Z]+$/;
const FOLDER = /^([1-9]\d{2})[0-9A-Z_]{5}$/;

/** After 9999 a camera goes on with 0001. */
const NUMBERS = 9999;

/**
 * The number in a camera file's name, or null where the name is not of that form. Eight digits alone are taken
 * for a date, not for a number.
 *
 * @param folderName name of the folder the file lies in, `100APPLE` say, or null
 */
export function findDcfNumber(fileName: string, folderName: string | null): DcfNumber | null {
  const name = fileName.toUpperCase();
  const edited = EDITED_NAME.exec(name);
  const plain = NAME.exec(name);
  const series = edited ? 'IMG_' : (plain?.[1] ?? '');
  const value = Number(edited?.[1] ?? plain?.[2] ?? 0);
  if (value < 1 || /^\d{4}$/.test(series)) return null;
  const folder = FOLDER.exec((folderName ?? '').toUpperCase());
  return { series, value, folder: folder ? Number(folder[1]) : null, isEdited: edited !== null };
}

/** How many steps lie between two numbers on the circle 0001 … 9999: one from 9999 to 0001. */
export function getDcfDistance(a: number, b: number): number {
  const forward = (((b - a) % NUMBERS) + NUMBERS) % NUMBERS;
  return Math.min(forward, NUMBERS - forward);
}
