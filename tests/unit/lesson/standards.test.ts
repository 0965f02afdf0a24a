import { describe, expect, test } from 'vitest';
import { planSchema } from '../../../src-core/lesson/plan.ts';
import { parseStandards, SHAPE_STANDARDS } from '../../../src-core/lesson/standards.ts';
import { getRawPlan } from './small-plan.ts';

// SHAPE America, "National Physical Education Standards", 4th edition, March 2024: four standards, five before.
test('the national standards are four, with their source, and fit into a plan', () => {
  expect(SHAPE_STANDARDS.map(({ code }) => code)).toEqual(['shape-1', 'shape-2', 'shape-3', 'shape-4']);
  for (const { source } of SHAPE_STANDARDS) expect(source).toContain('March 2024');
  const plan = planSchema.parse({ ...getRawPlan(), standards: SHAPE_STANDARDS });
  expect(plan.standards).toEqual(SHAPE_STANDARDS);
});

describe('standards from a CSV', () => {
  test('are read by column, with codes brought to small letters', () => {
    const { standards, problems } = parseStandards(
      '\uFEFFsource,Code,text\r\n"Cobble Quay, 2025",PE.7.2,"Moves well, and safely"\r\n',
    );
    expect(problems).toEqual([]);
    expect(standards).toEqual([
      { code: 'pe-7-2', text: 'Moves well, and safely', source: 'Cobble Quay, 2025' },
    ]);
  });

  test('leave out and name what is incomplete, no code, or there twice', () => {
    const { standards, problems } = parseStandards('code,text,source\na,,x\n--,t,x\nA,t,x\na,u,x\n\n');
    expect(standards.map(({ code }) => code)).toEqual(['a']);
    expect(problems).toEqual([
      { code: 'standards-line-incomplete', line: 2 },
      { code: 'standards-code-bad', line: 3, value: '--' },
      { code: 'standards-code-twice', line: 5, value: 'a' },
    ]);
  });

  test('are none without the columns', () => {
    expect(parseStandards('code,name\n1,x\n').problems).toEqual([
      { code: 'standards-column-missing', column: 'text' },
      { code: 'standards-column-missing', column: 'source' },
    ]);
  });
});
