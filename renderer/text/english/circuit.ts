import type { AsideReason } from '../../../src-core/contract/aside-reason.ts';
import type { OrderRule } from '../../../src-core/lesson/plan.ts';
import type { ClipAssignment } from '../../../src-core/matching/assignment.ts';
import { RULE_WORDS } from './scores.ts';

/** What breaking the order costs, in a few words that go on within a line. */
export function nameOrderRule(rule: OrderRule): string {
  const { name } = RULE_WORDS[rule];
  return name.charAt(0).toLowerCase() + name.slice(1);
}

const ASIDE: Readonly<Record<AsideReason, string>> = {
  'clock-film': 'film of the class clock',
  'edited-copy': 'edited copy; the original counts',
  'other-period': 'of another period',
  unreadable: 'cannot be read',
  'by-teacher': 'set aside by the teacher',
  'other-squad': 'waits: another squad’s?',
  nobodys: 'waits: whose is it?',
};

/** Why a clip takes no part in a route, in a few words. */
export function nameAside(reason: AsideReason): string {
  return ASIDE[reason];
}

const STATION_SOURCES = { teacher: 'by teacher', card: 'card', inferred: 'inferred' } as const;

/** How a clip's station is known, in a word or two; empty where it is not. */
export function nameStationSource(from: ClipAssignment['stationFrom']): string {
  return from === null ? '' : STATION_SOURCES[from];
}
