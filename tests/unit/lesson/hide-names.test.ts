import { describe, expect, test } from 'vitest';
import { buildNameHider, HIDDEN_NAME } from '../../../src-core/lesson/hide-names.ts';
import { buildPupil } from '../marking/harbour.ts';

const odda = buildPupil('k-0412', { given: 'Odda', family: 'Quillfeather' });
const others = [
  buildPupil('k-0413', { given: 'Bram', family: 'van der Tide' }),
  buildPupil('k-0414', { given: 'Junip-Mae', family: 'Quillfeather' }),
  buildPupil('k-0415', { given: 'Åse', family: 'Fog (Bottom)' }),
];
const hide = buildNameHider(odda, others);

describe('other pupils’ names', () => {
  test.each([
    ['Odda carried the mats back, Bram did not.', `Odda carried the mats back, ${HIDDEN_NAME} did not.`],
    ['BRAM’s shoe', `${HIDDEN_NAME}’s shoe`],
    ['Bram van der Tide', `${HIDDEN_NAME} ${HIDDEN_NAME}`],
    ['with Mae and k-0413', `with ${HIDDEN_NAME} and ${HIDDEN_NAME}`],
    ['åse fell', `${HIDDEN_NAME} fell`],
    ['A\u030Ase fell', `${HIDDEN_NAME} fell`],
    ['Fog (Bottom), late', `${HIDDEN_NAME}, late`],
  ])('are taken out of “%s”', (text, hidden) => expect(hide(text)).toBe(hidden));

  test('that the pupil shares stay, and so do words that only hold one', () => {
    expect(hide('Quillfeather twice; bramble; Odda')).toBe('Quillfeather twice; bramble; Odda');
  });

  test('are none in a class of one', () => expect(buildNameHider(odda, [])('Bram')).toBe('Bram'));
});
