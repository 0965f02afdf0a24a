import { describe, expect, test } from 'vitest';
import { assignSquad } from '../../../src-core/intake/assign-squad.ts';
import type { Squad } from '../../../src-core/lesson/plan.ts';

const squad = (code: string, name: string, pinnie: string, tablet: string): Squad => ({
  code,
  name,
  pinnie: { name: pinnie, colour: '#1F8A86' },
  tablet,
  startsAt: 'A',
  route: ['A'],
});
const squads = [
  squad('teal', 'Teal', 'teal', 'tablet 1'),
  squad('amber', 'Amber', 'amber', 'tablet 2'),
  squad('crab', 'Écrevisses', 'chalk white', 'tablet 12'),
];
const owner = (path: string, root = 'clips') => assignSquad(path, root, squads);

describe('whose folder a clip lies in', () => {
  test.each([
    ['teal/IMG_0001.MOV', 'teal'],
    ['TEAL squad/IMG_0001.MOV', 'teal'],
    ['Team Teal/a.mp4', 'teal'],
    ['2025-05-15 Teal/a.mp4', 'teal'],
    ['Tablet 2/DCIM/100APPLE/IMG_0001.MOV', 'amber'],
    ['tablet-02/a.mp4', 'amber'],
    ['TABLET2/a.mp4', 'amber'],
    ['Tablet 12/a.mp4', 'crab'],
    ['ecrevisses/a.mp4', 'crab'],
    ['E\u0301crevisses (clips)/a.mp4', 'crab'],
    ['Chalk White pinnies/a.mp4', 'crab'],
  ])('%s is told apart', (path, code) => {
    expect(owner(path)).toEqual({ squad: code });
  });

  test('one squad’s folder can be scanned alone, and a folder below outranks the one above', () => {
    expect(owner('IMG_0001.MOV', 'Teal')).toEqual({ squad: 'teal' });
    expect(owner('amber/IMG_0001.MOV', 'Teal')).toEqual({ squad: 'amber' });
  });

  test.each(['new folder/a.mp4', 'tealish/a.mp4', 'tablet/a.mp4', 'tablet 3/a.mp4', 'a.mp4', '.../a.mp4'])(
    '%s waits: nobody is named',
    (path) => {
      expect(owner(path)).toEqual({ squad: null, reason: 'no-squad-named' });
    },
  );

  test('a path that names two squads waits', () => {
    expect(owner('teal/amber/a.mp4')).toEqual({ squad: null, reason: 'several-squads-named' });
    expect(owner('teal and amber/a.mp4')).toEqual({ squad: null, reason: 'no-squad-named' });
  });
});
