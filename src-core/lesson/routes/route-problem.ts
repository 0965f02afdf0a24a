import type { SquadCode, StationCode } from '../plan.ts';

/** A leg that a route may not hold: from a station straight to another. */
export type Leg = readonly [from: StationCode, to: StationCode];

/** Why there are no routes as asked for; which wish is to blame. */
export type RouteProblem =
  | { readonly code: 'routes-without-squads' }
  | { readonly code: 'routes-without-stations' }
  /** There are more squads than stations: some slot would have two squads at one station, whatever the routes. */
  | { readonly code: 'routes-too-many-squads'; readonly squads: number; readonly stations: number }
  /** A squad is to start where no route goes: the station is unknown or left out. */
  | { readonly code: 'routes-start-unknown'; readonly squad: SquadCode; readonly station: StationCode }
  | {
      readonly code: 'routes-start-twice';
      readonly station: StationCode;
      readonly squads: readonly [SquadCode, SquadCode];
    }
  /** No order of the stations does without these legs; with any one of them allowed there would be one. */
  | {
      readonly code: 'routes-legs-needed';
      readonly design: 'cyclic' | 'balanced';
      readonly legs: readonly Leg[];
    }
  /** None was found, and that there is none was not proved: there are too many orders to try them all. */
  | {
      readonly code: 'routes-not-found';
      readonly design: 'cyclic' | 'balanced';
      readonly legs: readonly Leg[];
    };
