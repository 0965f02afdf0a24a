import type { ReadinessProblem } from '../../../src-core/lesson/lesson-problem.ts';
import { count, list, span } from './amounts.ts';
import type { Wordings } from './wordings.ts';

/** Words for what would go wrong in class although the plan can be marked by. */
export const readinessProblems: Wordings<ReadinessProblem['code']> = {
  'plan-text-too-long': ({ path, length, limit }, names) => ({
    what: `${names.planPlace(path)}: ${count(length, 'character')}, and its place on paper has room for ${limit}.`,
    todo: 'Say it in fewer words.',
  }),
  'plan-word-too-long': ({ path, word }, names) => ({
    what: `${names.planPlace(path)}: “${word}” is too long for one line of its place on paper.`,
    todo: 'Part it with a hyphen, or say it in other words.',
  }),
  'plan-clue-missing': ({ path, station }, names) => ({
    what: `${names.planPlace(path)}: nothing leads to station ${station}, though other stations are found by a clue.`,
    todo: 'Write the clue that leads there; squads read it at the station before.',
  }),
  'plan-too-many-squads': ({ path, squads, stations }, names) => ({
    what: `${names.planPlace(path)}: ${count(squads, 'squad')} on ${count(stations, 'station')}; two would always share one.`,
    todo: 'Form fewer squads, or add stations: a twin of a station needs its own code and card.',
  }),
  'plan-pinnies-alike': ({ path, squads }, names) => ({
    what: `${names.planPlace(path)}: the pinnies of ${list(squads.map(names.squad))} look too much alike on film.`,
    todo: 'Give one of them another colour.',
  }),
  'plan-standard-unknown': ({ path, standard }, names) => ({
    what: `${names.planPlace(path)}: the plan lists no standard “${standard}”.`,
    todo: 'Add it under standards, or take the tag away.',
  }),
  'plan-squad-unknown': ({ path, squad }, names) => ({
    what: `${names.planPlace(path)}: there is no squad “${squad}”.`,
    todo: 'Add the squad, or take this line out.',
  }),
  'plan-rotation-station-unknown': ({ path, station }, names) => ({
    what: `${names.planPlace(path)}: there is no station “${station}”.`,
    todo: 'Add the station, or take this line out.',
  }),
  'plan-left-out-visited': ({ path, squad, station }, names) => ({
    what: `${names.planPlace(path)}: ${names.squad(squad)} comes to station ${station}, which stays out today.`,
    todo: 'Have routes made anew, or take the station in again.',
  }),
  'plan-start-not-kept': ({ path, squad, station }, names) => ({
    what: `${names.planPlace(path)}: ${names.squad(squad)} is to begin at ${station}, and does not.`,
    todo: 'Have routes made anew, or let the squad begin anywhere.',
  }),
  'plan-leg-forbidden': ({ path, squad, leg: [from, to] }, names) => ({
    what: `${names.planPlace(path)}: ${names.squad(squad)} walks from ${from} straight to ${to}, which the rotation forbids.`,
    todo: 'Have routes made anew, or allow the leg.',
  }),
  'plan-timing-too-long': ({ path, minutes, periodMinutes }, names) => ({
    what: `${names.planPlace(path)}: warm-up and clearing up take ${minutes} min, and the period has ${periodMinutes} min.`,
    todo: 'Leave time for the circuit.',
  }),
  'plan-reps-too-many': ({ path, station, neededSeconds, slotSeconds }, names) => ({
    what: `${names.planPlace(path)}: even quick reps at station ${station} take ${span(neededSeconds)}, and a slot has ${span(slotSeconds)}.`,
    todo: 'Ask for fewer reps. Never for quicker ones.',
  }),
  'plan-slot-too-short': ({ path, station, neededSeconds, slotSeconds }, names) => ({
    what: `${names.planPlace(path)}: the way to station ${station}, its card and its reps take ${span(neededSeconds)}, and a slot has ${span(slotSeconds)}.`,
    todo: 'Ask for fewer reps, visit fewer stations or shorten the way.',
  }),
};
