import type { BundleFault } from './bundle-fault.ts';
import type { BundleCheck } from './check-bundle.ts';
import { chooseClass, isPupilOf, listStanding, type MarkedPupils } from './school-set.ts';
import type { OneRosterVersion } from './tables.ts';

/** What of a school's own set the teacher chooses from, and what is wrong with it. */
export interface SchoolDescription {
  /** Null where it could not be told: nothing can be built on the set then. */
  readonly version: OneRosterVersion | null;
  /** Classes that have pupils of the roster, most of them first. */
  readonly classes: readonly { readonly id: string; readonly title: string; readonly pupils: number }[];
  /** The class that the marks go to; null: none, or it must be chosen. */
  readonly classId: string | null;
  readonly categories: readonly { readonly id: string; readonly title: string }[];
  /** The first {@link MOST_SLIPS}; they hold nothing up. */
  readonly faults: readonly BundleFault[];
  readonly faultCount: number;
}

/** More faults of somebody else's set nobody reads; a district's may have thousands. */
const MOST_SLIPS = 50;

/** Describes a school's set for these pupils; `classId` is the class that was asked for, null: the one that fits. */
export function describeSchool(
  { version, rows, faults }: BundleCheck,
  pupils: MarkedPupils,
  classId: string | null,
): SchoolDescription {
  const enrollments = listStanding(rows, 'enrollments');
  const chosen = chooseClass(rows, pupils, classId);
  return {
    version,
    classes: listStanding(rows, 'classes')
      .map(({ sourcedId: id = '', title = '' }) => ({
        id,
        title,
        pupils: enrollments.filter(isPupilOf(id, pupils)).length,
      }))
      .filter((one) => one.pupils > 0)
      .sort((one, other) => other.pupils - one.pupils),
    classId: chosen.ok ? (chosen.value.sourcedId ?? null) : null,
    categories: listStanding(rows, 'categories').map(({ sourcedId: id = '', title = '' }) => ({ id, title })),
    faults: faults.slice(0, MOST_SLIPS),
    faultCount: faults.length,
  };
}
