import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keepLastStep, readLastStep } from '../../../renderer/client/last-step.ts';

const kept = new Map<string, string>();

beforeEach(() => {
  kept.clear();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
  });
});

afterEach(() => vi.unstubAllGlobals());

test('a lesson opens where it was left, each by itself', () => {
  keepLastStep('0123456789abcdef', 'review');
  keepLastStep('fedcba9876543210', 'plan');
  expect(readLastStep('0123456789abcdef')).toBe('review');
  expect(readLastStep('fedcba9876543210')).toBe('plan');
  expect(readLastStep('aaaaaaaaaaaaaaaa')).toBe('bring-in');
});

test('what cannot be read, or names no step, is Bring in', () => {
  for (const text of ['', 'no JSON', 'null', '[]', '{"0123456789abcdef":"nowhere"}']) {
    kept.set('routemark.last-steps', text);
    expect(readLastStep('0123456789abcdef')).toBe('bring-in');
  }
});

test('only the latest lessons are remembered', () => {
  const name = (at: number) => at.toString(16).padStart(16, '0');
  for (let at = 0; at < 60; at += 1) keepLastStep(name(at), 'scores');
  expect(readLastStep(name(59))).toBe('scores');
  expect(readLastStep(name(10))).toBe('scores');
  expect(readLastStep(name(9))).toBe('bring-in');
});
