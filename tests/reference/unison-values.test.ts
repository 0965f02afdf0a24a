import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src-core/platform/seeded-random.ts';
import { STEPS_PER_CYCLE } from '../../src-core/signal/cycle-samples.ts';
import { followLag } from '../../src-core/signal/lane-lag.ts';
import {
  getChanceAgreement,
  measureAgreement,
  rescaleAgreement,
} from '../../src-core/signal/order-parameter.ts';
import { findLagSeconds } from '../../src-core/signal/phase.ts';
import { measurePhaseLocking } from '../../src-core/signal/phase-locking.ts';

const toRadians = (degrees: number) => (degrees * Math.PI) / 180;

describe('the order parameter', () => {
  // R·exp(iψ) = (1/N) Σ exp(iθ): T. D. Frank and M. J. Richardson, "On a test statistic for the Kuramoto order
  // parameter of synchronization: an illustration for group synchronization during rocking chairs", Physica D 239
  // (2010). The values follow in closed form.
  test.each([
    [[0, 0, 0, 0], 1],
    [[0, 180], 0],
    [[0, 90], Math.SQRT1_2],
    [[0, 90, 180, 270], 0],
    [[0, 30, 60], (1 + Math.sqrt(3)) / 3],
    [[0, 10, 20, 30], Math.sin(toRadians(20)) / (4 * Math.sin(toRadians(5)))],
    [[0, 0, 0, 180], 0.5],
  ])('of %j degrees is %d', (degrees, expected) => {
    expect(measureAgreement(degrees.map(toRadians)).length).toBeCloseTo(expected, 12);
  });

  // The same angles as numbers, computed apart with numpy.
  test('agrees with the worked decimals', () => {
    expect(measureAgreement([0, 30, 60].map(toRadians)).length).toBeCloseTo(0.910684, 6);
    expect(measureAgreement([0, 10, 20, 30].map(toRadians)).length).toBeCloseTo(0.98106, 6);
  });

  test('has no direction to give without phases', () => {
    expect(measureAgreement([])).toEqual({ length: 0, phase: 0 });
    expect(measureAgreement([1, 2], [0, 0])).toEqual({ length: 0, phase: 0 });
  });

  // 51 glacial striations of southern Finland, J. C. Davis, "Statistics and Data Analysis in Geology", 2nd edition
  // (1986), p. 316, as listed with the result 0.800 in the reference manual of the R package tectonicr, section
  // "mean_resultant_length"; the mean direction of 129.2° is in Davis' text (from memory).
  test('over published directions is the published mean resultant length', () => {
    const striations = [
      23, 27, 53, 58, 64, 83, 85, 88, 93, 99, 100, 105, 113, 113, 114, 117, 121, 123, 125, 126, 126, 126, 127,
      127, 128, 128, 129, 132, 132, 132, 134, 135, 137, 144, 145, 145, 146, 153, 155, 155, 155, 157, 163, 165,
      171, 172, 179, 181, 186, 190, 212,
    ];
    expect(striations).toHaveLength(51);
    const { length, phase } = measureAgreement(striations.map(toRadians));
    expect(Math.abs(length - 0.8)).toBeLessThan(0.0005);
    expect((phase * 180) / Math.PI).toBeCloseTo(129.19, 1);
  });
});

/** J₀ by Bessel's integral, (1/π) ∫₀^π cos(t·sin τ) dτ (NIST Handbook of Mathematical Functions, 10.9.1). */
function besselJ0(t: number): number {
  const parts = 64 + Math.ceil(2 * t);
  let sum = 0;
  for (let part = 0; part < parts; part++) sum += Math.cos(t * Math.sin((Math.PI * (part + 0.5)) / parts));
  return sum / parts;
}

/** ∫₀^∞ (1 − J₀(t)^N)/t² dt / N, Simpson's rule to 120 and 1/t² beyond, where J₀(t)^N is small against 1. */
function integrateWalk(count: number): number {
  const end = 120;
  const parts = 6000;
  const step = end / parts;
  const value = (t: number) => (t < 1e-4 ? count / 4 : (1 - besselJ0(t) ** count) / t ** 2);
  let sum = value(0) + value(end);
  for (let part = 1; part < parts; part++) sum += (part % 2 === 1 ? 4 : 2) * value(part * step);
  return ((sum * step) / 3 + 1 / end) / count;
}

describe('chance', () => {
  // Mean and 95 % point of R over 400,000 draws of N uniform phases with numpy, to three places. The 95 % points agree
  // with the Rayleigh test's critical mean resultant lengths (N. I. Fisher, "Statistical Analysis of Circular Data",
  // section 4.3; from memory): 0.838 for 4, 0.692 for 6, 0.541 for 10.
  const SIMULATED = [
    [2, 0.637, 0.997],
    [3, 0.524, 0.941],
    [4, 0.449, 0.845],
    [5, 0.401, 0.757],
    [6, 0.366, 0.691],
    [8, 0.316, 0.602],
    [10, 0.282, 0.54],
    [30, 0.162, 0.315],
  ] as const;

  test.each(SIMULATED)('lets %d strangers agree by %d', (count, mean, most) => {
    expect(Math.abs(getChanceAgreement(count) - mean)).toBeLessThan(0.0012);
    expect(getChanceAgreement(count)).toBeLessThan(most);
  });

  test('is the mean length of a plane random walk, integrated', () => {
    for (const count of [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 20, 30]) {
      // J₀² of two steps decays too slowly for a cut at 120; closed form below.
      expect(getChanceAgreement(count), `${count}`).toBeCloseTo(integrateWalk(count), 4);
    }
    // Two steps meet at |cos| of half their angle, the mean of which is 2/π.
    expect(getChanceAgreement(2)).toBeCloseTo(2 / Math.PI, 5);
  });

  test('shrinks as √(π/4N) for many', () => {
    expect(getChanceAgreement(1000)).toBeCloseTo(Math.sqrt(Math.PI / 4000), 5);
  });

  test('drawn from a seed has the table’s mean, and is rescaled to 0', () => {
    const random = seededRandom(20_251);
    for (const count of [2, 4, 5]) {
      const draws = 20_000;
      let sum = 0;
      for (let draw = 0; draw < draws; draw++) {
        sum += measureAgreement(Array.from({ length: count }, () => random() * 2 * Math.PI)).length;
      }
      expect(Math.abs(sum / draws - getChanceAgreement(count))).toBeLessThan(0.006);
      expect(rescaleAgreement(sum / draws, count)).toBeLessThan(0.02);
    }
  });

  test('leaves unison at 1, is negative below chance, and says nothing of one alone', () => {
    expect(rescaleAgreement(1, 4)).toBe(1);
    expect(rescaleAgreement(0.2, 4)).toBeCloseTo((0.2 - 0.449773) / (1 - 0.449773), 6);
    expect(rescaleAgreement(0.5, 4)).toBeCloseTo((0.5 - 0.449773) / (1 - 0.449773), 6);
    expect(rescaleAgreement(1, 1)).toBe(0);
  });
});

describe('the phase-locking value', () => {
  // Lachaux et al., "Measuring phase synchrony in brain signals", Human Brain Mapping 8 (1999), equation 1.
  const phases = Array.from({ length: 50 }, (_, at) => at * 0.4);

  test('is 1 for identical phases and for any constant distance', () => {
    expect(measurePhaseLocking(phases, phases)).toBeCloseTo(1, 12);
    expect(
      measurePhaseLocking(
        phases,
        phases.map((phase) => phase + 2),
      ),
    ).toBeCloseTo(1, 12);
  });

  test('is 0 for nothing, and small for phases that drift apart', () => {
    expect(measurePhaseLocking([], [])).toBe(0);
    const drifting = phases.map((phase, at) => phase + (2 * Math.PI * at) / 50);
    expect(measurePhaseLocking(phases, drifting)).toBeCloseTo(0, 12);
  });

  // Group cluster phase of M. J. Richardson et al., "Measuring group synchrony: a cluster-phase method for analyzing
  // multivariate movement time-series", Frontiers in Physiology 3:405 (2012; from memory) takes each member's constant
  // lead out, so a quarter of a cycle apart still scores 1; the order parameter does not.
  test('forgives a constant quarter of a cycle, which the order parameter does not', () => {
    expect(
      measurePhaseLocking(
        [0, 0, 0],
        [1, 1, 1].map((sign) => (sign * Math.PI) / 2),
      ),
    ).toBeCloseTo(1, 12);
    expect(measureAgreement([0, Math.PI / 2]).length).toBeCloseTo(Math.cos(Math.PI / 4), 9);
  });
});

/** The lag at which `later` best repeats `earlier`: argmax over τ of Σ earlier(t)·later(t + τ). */
function correlateLag(earlier: number[], later: number[], most: number): number {
  const lags = Array.from({ length: 2 * most + 1 }, (_, at) => at - most);
  const scores = lags.map((lag) =>
    earlier.reduce((sum, value, at) => sum + value * (later[at + lag] ?? 0), 0),
  );
  return lags[scores.indexOf(Math.max(...scores))] ?? 0;
}

describe('a lag', () => {
  // Definition of the cross-correlation function (common practice); 30 frames a second, one cycle a second.
  const sine = (shift: number) =>
    Array.from({ length: 300 }, (_, at) => Math.sin((2 * Math.PI * (at - shift)) / 30));
  // The same read at the steps of the cycle, moving up and down, and aslant.
  const steps = (shift: number, right: number) => {
    const v = Float64Array.from({ length: 5 * STEPS_PER_CYCLE }, (_, at) =>
      Math.sin(2 * Math.PI * ((at + 0.5) / STEPS_PER_CYCLE - shift / 30)),
    );
    return { u: v.map((value) => right * value), v };
  };
  const stretches = [1, 2, 3].map((cycle) => ({
    from: cycle * STEPS_PER_CYCLE,
    to: (cycle + 1) * STEPS_PER_CYCLE,
  }));
  const findLags = (earlier: number, later: number, right = 0) =>
    followLag(steps(later, right), steps(earlier, 0), stretches).map(({ steps: behind }) =>
      findLagSeconds((-2 * Math.PI * behind) / STEPS_PER_CYCLE, 1),
    );

  test('of three frames at 30 a second is 100 ms, behind positive and ahead negative, as cross-correlation has it', () => {
    expect(correlateLag(sine(0), sine(3), 12)).toBe(3);
    for (const lag of findLags(0, 3)) expect(lag).toBeCloseTo(0.1, 3);
    for (const lag of findLags(0, 3, 0.4)) expect(lag).toBeCloseTo(0.1, 3);
    expect(correlateLag(sine(0), sine(-3), 12)).toBe(-3);
    for (const lag of findLags(0, -3)) expect(lag).toBeCloseTo(-0.1, 3);
    for (const lag of findLags(3, 3)) expect(lag).toBeCloseTo(0, 9);
  });

  // φ = 360°·f·lag, and two unit vectors at an angle φ have a mean of length |cos(φ/2)| = |cos(π·f·lag)|.
  test.each([
    [1, 0.0333, 12, 0.9945],
    [1, 0.045, 16.2, 0.99],
    [1, 0.1, 36, 0.951],
    [1, 0.125, 45, 0.924],
    [1.5, 0.1, 54, 0.891],
  ])('at %d Hz of %d s is %d°, and the pair’s order parameter %d', (rateHz, lag, degrees, order) => {
    expect(findLagSeconds(-toRadians(degrees), 1 / rateHz)).toBeCloseTo(lag, 3);
    expect(measureAgreement([0, toRadians(degrees)]).length).toBeCloseTo(order, 3);
    expect(Math.abs(Math.cos(Math.PI * rateHz * lag))).toBeCloseTo(order, 3);
  });

  test('longer than half a cycle is the shorter way round', () => {
    expect(findLagSeconds(-toRadians(270), 2)).toBeCloseTo(-0.5, 9);
    expect(Object.is(findLagSeconds(0, 2), 0)).toBe(true);
  });
});
