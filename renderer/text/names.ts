/** How codes and instants become what the teacher calls them; each face fills it from the open lesson. */
export interface Names {
  /** `Teal` for `teal`. */
  readonly squad: (code: string) => string;
  /** `C, Gull Wall` for `C`. */
  readonly station: (code: string) => string;
  /** Where in the plan something stands, by its path in plan.json: the path itself, or the words of a sheet. */
  readonly planPlace: (path: string) => string;
  /** The file a clip id stands for. */
  readonly clip: (id: string) => string;
  /** A file or folder, whose name may tell whose it is. Not given: it is called as it is. */
  readonly file?: (path: string) => string;
  /** Local time of the school, `10:46:03`; with the date before it where that is not the lesson's. */
  readonly time: (ms: number) => string;
}

/** What happened, and what to do about it. */
export interface Advice {
  readonly what: string;
  /** Null: nothing needs doing. */
  readonly todo: string | null;
}
