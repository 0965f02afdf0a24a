import { describe, expect, test } from 'vitest';
import { nameIcc, nameKappa } from '../../renderer/text/english/agreement.ts';
import {
  findKappa,
  findShareAgreed,
  findWeightedKappa,
  tabulate,
} from '../../src-core/marking/agreement/cohens-kappa.ts';
import {
  findIntraclassCorrelations,
  findMeanSquares,
} from '../../src-core/marking/agreement/intraclass-correlation.ts';

describe('Cohen’s kappa', () => {
  // Wikipedia, "Cohen's kappa", section "Examples"; the tables are from memory.
  test.each([
    [
      [
        [20, 5],
        [10, 15],
      ],
      0.7,
      0.4,
    ],
    [
      [
        [45, 15],
        [25, 15],
      ],
      0.6,
      0.1304,
    ],
    [
      [
        [25, 35],
        [5, 35],
      ],
      0.6,
      0.2593,
    ],
  ])('of %j is as in the encyclopedia', (table, agreed, kappa) => {
    expect(findShareAgreed(table)).toBeCloseTo(agreed, 10);
    expect(findKappa(table)).toBeCloseTo(kappa, 4);
  });

  // scikit-learn, user guide, "Cohen's kappa" example; from memory.
  test('of three categories is scikit-learn’s 0.428571', () => {
    const [first, second] = [
      [2, 0, 2, 2, 0, 1],
      [0, 0, 2, 2, 0, 2],
    ] as [number[], number[]];
    const pairs = first.map((rating, at) => [rating, second[at] ?? -1] as const);
    expect(findKappa(tabulate(pairs, [0, 1, 2]))).toBeCloseTo(0.428571, 6);
  });

  // Cohen, "Weighted kappa: nominal scale agreement with provision for scaled disagreement or partial credit" (1968),
  // table 1, N = 200, weights 0, 1, 3 and 6; the proportions are from memory.
  describe('of Cohen’s table 1 of 1968', () => {
    const table = [
      [0.44, 0.07, 0.09],
      [0.05, 0.2, 0.05],
      [0.01, 0.03, 0.06],
    ].map((row) => row.map((share) => share * 200));
    const COSTS = [
      [0, 1, 3],
      [1, 0, 6],
      [3, 6, 0],
    ];

    test('is 0.492, and with his weights 0.348', () => {
      expect(findKappa(table)?.toFixed(3)).toBe('0.492');
      expect(findWeightedKappa(table, (row, column) => COSTS[row]?.[column] ?? 0)?.toFixed(3)).toBe('0.348');
    });

    // Computed with numpy from the same table.
    test('is 0.473684 with linear and 0.454545 with quadratic weights', () => {
      expect(findKappa(table, 'linear')).toBeCloseTo(0.473684, 6);
      expect(findKappa(table, 'quadratic')).toBeCloseTo(0.454545, 6);
    });
  });

  // Computed with scikit-learn's cohen_kappa_score; weights as in the help pages of R's vcd and DescTools.
  test('of a rubric of four levels is 0.428571, 0.620253 and 0.788732 by weights', () => {
    const first = [4, 3, 2, 1, 3, 4, 2, 3, 1, 4, 3, 2];
    const second = [4, 3, 3, 1, 2, 4, 2, 3, 2, 3, 3, 1];
    const table = tabulate(
      first.map((rating, at) => [rating, second[at] ?? 0] as const),
      [1, 2, 3, 4],
    );
    expect(findKappa(table)).toBeCloseTo(0.428571, 6);
    expect(findKappa(table, 'linear')).toBeCloseTo(0.620253, 6);
    expect(findKappa(table, 'quadratic')).toBeCloseTo(0.788732, 6);
  });

  test('is 1 where all agree in two categories, and below 0 where they agree less than by chance', () => {
    expect(
      findKappa([
        [5, 0],
        [0, 5],
      ]),
    ).toBe(1);
    expect(
      findKappa([
        [0, 5],
        [5, 0],
      ]),
    ).toBe(-1);
  });

  test('is not defined where every rating is the same, nor where there is none', () => {
    expect(
      findKappa([
        [12, 0],
        [0, 0],
      ]),
    ).toBeNull();
    expect(
      findKappa(
        [
          [12, 0],
          [0, 0],
        ],
        'quadratic',
      ),
    ).toBeNull();
    expect(
      findKappa([
        [0, 0],
        [0, 0],
      ]),
    ).toBeNull();
    expect(
      findShareAgreed([
        [0, 0],
        [0, 0],
      ]),
    ).toBeNull();
  });
});

describe('intraclass correlation', () => {
  // Shrout & Fleiss, "Intraclass correlations: uses in assessing rater reliability", Psychological Bulletin 86
  // (1979), table 2 (six targets, four judges) and table 4; the printed coefficients are from memory.
  const RATINGS = [
    [9, 2, 5, 8],
    [6, 1, 3, 2],
    [8, 4, 6, 8],
    [7, 1, 2, 6],
    [10, 5, 6, 9],
    [6, 2, 4, 7],
  ];

  test('has the mean squares of Shrout and Fleiss', () => {
    const squares = findMeanSquares(RATINGS);
    expect(squares?.betweenTargets).toBeCloseTo(11.2417, 4);
    expect(squares?.withinTargets).toBeCloseTo(6.2639, 4);
    expect(squares?.betweenRaters).toBeCloseTo(32.4861, 4);
    expect(squares?.residual).toBeCloseTo(1.0194, 4);
  });

  test.each([
    ['ICC(1,1)', '0.17', 0.165742],
    ['ICC(2,1)', '0.29', 0.289764],
    ['ICC(3,1)', '0.71', 0.714841],
    ['ICC(1,k)', '0.44', 0.442797],
    ['ICC(2,k)', '0.62', 0.620051],
    ['ICC(3,k)', '0.91', 0.909316],
  ] as const)('%s is the printed %s', (name, printed, computed) => {
    const value = findIntraclassCorrelations(RATINGS)?.[name];
    expect(value?.toFixed(2)).toBe(printed);
    expect(value).toBeCloseTo(computed, 6);
  });

  test('of raters who always differ by a point is below 1 by their numbers and 1 by their order', () => {
    const shifted = findIntraclassCorrelations([
      [1, 2],
      [2, 3],
      [5, 6],
    ]);
    expect(shifted?.['ICC(3,1)']).toBeCloseTo(1, 10);
    expect(shifted?.['ICC(2,1)']).toBeLessThan(0.95);
  });

  test('is not defined where ratings do not differ, nor with one target or one rater', () => {
    const same = findIntraclassCorrelations([
      [3, 3],
      [3, 3],
      [3, 3],
    ]);
    expect(same?.['ICC(2,1)']).toBeNull();
    expect(findIntraclassCorrelations([[3, 4]])).toBeNull();
    expect(findIntraclassCorrelations([[3], [4]])).toBeNull();
    expect(findIntraclassCorrelations([[3, 4], [2]])).toBeNull();
  });
});

describe('the words for agreement', () => {
  // Landis & Koch, "The measurement of observer agreement for categorical data" (1977): .00 and below poor, .01–.20
  // slight, .21–.40 fair, .41–.60 moderate, .61–.80 substantial, .81–1.00 almost perfect.
  test.each([
    [-0.1, 'poor'],
    [0, 'poor'],
    [0.01, 'slight'],
    [0.2, 'slight'],
    [0.21, 'fair'],
    [0.4, 'fair'],
    [0.41, 'moderate'],
    [0.6, 'moderate'],
    [0.61, 'substantial'],
    [0.8, 'substantial'],
    [0.81, 'almost perfect'],
    [1, 'almost perfect'],
  ])('kappa %f is %s', (kappa, word) => expect(nameKappa(kappa)).toBe(word));

  // Koo & Li, "A guideline of selecting and reporting intraclass correlation coefficients" (2016); from memory.
  test.each([
    [0.49, 'poor'],
    [0.5, 'moderate'],
    [0.75, 'good'],
    [0.91, 'excellent'],
  ])('an ICC of %f is %s', (icc, word) => expect(nameIcc(icc)).toBe(word));
});
