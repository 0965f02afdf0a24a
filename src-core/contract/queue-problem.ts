/** Why clips cannot be handed to workers over a queue. */
export type QueueProblem =
  /** Not an address of a Redis. It is not repeated: a password may stand in it. */
  | { readonly code: 'queue-address-odd' }
  /** The optional packages were left out when Routemark was installed. */
  | { readonly code: 'queue-engine-missing' }
  /** `host` with its port; `detail` in the system's own words, possibly empty. */
  | { readonly code: 'queue-unreachable'; readonly host: string; readonly detail: string };
