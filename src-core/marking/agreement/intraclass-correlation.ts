/** A target's ratings, one a rater, in the raters' order. */
type TargetRatings = readonly number[];

/** Mean squares of a two-way layout of targets and raters, one rating a cell. */
export interface MeanSquares {
  readonly betweenTargets: number;
  readonly withinTargets: number;
  readonly betweenRaters: number;
  readonly residual: number;
  readonly targets: number;
  readonly raters: number;
}

/** The six coefficients by their usual names; null where one is 0 / 0. */
export interface IntraclassCorrelations {
  readonly 'ICC(1,1)': number | null;
  readonly 'ICC(2,1)': number | null;
  readonly 'ICC(3,1)': number | null;
  readonly 'ICC(1,k)': number | null;
  readonly 'ICC(2,k)': number | null;
  readonly 'ICC(3,k)': number | null;
}

/** Null with fewer than two targets or two raters, or where a target lacks a rating. */
export function findMeanSquares(ratings: readonly TargetRatings[]): MeanSquares | null {
  const [targets, raters] = [ratings.length, ratings[0]?.length ?? 0];
  if (targets < 2 || raters < 2 || ratings.some((row) => row.length !== raters)) return null;
  const grandMean = mean(ratings.flat());
  const targetMeans = ratings.map(mean);
  const raterMeans = Array.from({ length: raters }, (_, at) => mean(ratings.map((row) => row[at] ?? 0)));
  const betweenTargets = raters * addSquares(targetMeans.map((value) => value - grandMean));
  const betweenRaters = targets * addSquares(raterMeans.map((value) => value - grandMean));
  const withinTargets = addSquares(
    ratings.flatMap((row, at) => row.map((value) => value - (targetMeans[at] ?? 0))),
  );
  return {
    betweenTargets: betweenTargets / (targets - 1),
    withinTargets: withinTargets / (targets * (raters - 1)),
    betweenRaters: betweenRaters / (raters - 1),
    residual: Math.max(0, withinTargets - betweenRaters) / ((targets - 1) * (raters - 1)),
    targets,
    raters,
  };
}

/**
 * How alike raters rate the same targets (Shrout & Fleiss, "Intraclass correlations: uses in assessing rater
 * reliability", 1979). ICC(2,1) is for raters who stand for others like them, judged one at a time and by their very
 * numbers: a rater who is always a point lower does not agree. Null where ratings do not differ at all.
 */
export function findIntraclassCorrelations(ratings: readonly TargetRatings[]): IntraclassCorrelations | null {
  const squares = findMeanSquares(ratings);
  if (!squares) return null;
  const {
    betweenTargets: b,
    withinTargets: w,
    betweenRaters: j,
    residual: e,
    targets: n,
    raters: k,
  } = squares;
  return {
    'ICC(1,1)': divide(b - w, b + (k - 1) * w),
    'ICC(2,1)': divide(b - e, b + (k - 1) * e + (k * (j - e)) / n),
    'ICC(3,1)': divide(b - e, b + (k - 1) * e),
    'ICC(1,k)': divide(b - w, b),
    'ICC(2,k)': divide(b - e, b + (j - e) / n),
    'ICC(3,k)': divide(b - e, b),
  };
}

function divide(above: number, below: number): number | null {
  return Math.abs(below) < 1e-12 ? null : above / below;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function addSquares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}
