import { describe, expect, test } from 'vitest';
import { openPlanDraft, type SavedPlan } from '../../../../renderer/features/plan/plan-draft.ts';
import { changeLesson } from '../../../../renderer/features/plan/plan-edits.ts';
import {
  addStation,
  recodeStation,
  removeStation,
} from '../../../../renderer/features/plan/station-edits.ts';
import type { Problem } from '../../../../src-core/contract/problem.ts';
import { checkPlan } from '../../../../src-core/lesson/check-plan.ts';
import type { Plan } from '../../../../src-core/lesson/plan.ts';
import { buildSmallPlan } from '../../lesson/small-plan.ts';

/** A disk that keeps one plan, refuses codes used twice as the real one does, and writes when it is told to. */
function openDisk() {
  let saved: SavedPlan = { plan: buildSmallPlan(), version: '1' };
  let waiting: (() => void)[] = [];
  const written: string[] = [];
  const put = (plan: Plan) => {
    saved = { plan, version: String(Number(saved.version) + 1) };
  };
  const save = async (base: string, plan: Plan): Promise<readonly Problem[]> => {
    await new Promise<void>((go) => waiting.push(go));
    if (base !== saved.version) return [{ code: 'plan-changed-elsewhere' }];
    const slips = checkPlan(plan).filter(({ code }) => code === 'plan-code-twice');
    if (slips.length > 0) return slips;
    written.push(plan.lesson.title);
    put(plan);
    return [];
  };
  /** Lets every write that waits go on, and those that they lead to. */
  const settle = async () => {
    for (let turn = 0; turn < 6; turn += 1) {
      const ready = waiting;
      waiting = [];
      for (const go of ready) go();
      await new Promise((go) => setTimeout(go, 0));
    }
  };
  return { getSaved: () => saved, save, settle, put, written };
}

describe('the draft of a plan', () => {
  test('shows an edit at once and writes it', async () => {
    const disk = openDisk();
    const draft = openPlanDraft(disk);
    void draft.change(changeLesson({ title: 'Quay circuit' }));
    expect(draft.getState()).toMatchObject({ plan: { lesson: { title: 'Quay circuit' } }, isSaving: true });
    expect(disk.getSaved().plan.lesson.title).toBe('Pier circuit');
    await disk.settle();
    expect(disk.getSaved().plan.lesson.title).toBe('Quay circuit');
    expect(draft.getState()).toMatchObject({ refused: [], isSaving: false });
  });

  test('edits made while one is on its way go together in the next write', async () => {
    const disk = openDisk();
    const draft = openPlanDraft(disk);
    void draft.change(changeLesson({ title: 'One' }));
    void draft.change(changeLesson({ title: 'Two' }));
    void draft.change(changeLesson({ title: 'Three' }));
    await disk.settle();
    expect(disk.written).toEqual(['One', 'Three']);
  });

  test('what is refused stays on the sheet with its reason, and what mends it saves both', async () => {
    const disk = openDisk();
    const draft = openPlanDraft(disk);
    void draft.change(recodeStation('A', 'B'));
    await disk.settle();
    expect(draft.getState().refused.map(({ code }) => code)).toEqual(['plan-code-twice']);
    expect(draft.getState().plan.stations.map(({ code }) => code)).toEqual(['B', 'B']);
    expect(disk.getSaved().plan.stations.map(({ code }) => code)).toEqual(['A', 'B']);
    void draft.change(({ stations }) => ({
      stations: stations.map((station, at) => (at === 0 ? { ...station, code: 'C' } : station)),
    }));
    await disk.settle();
    expect(draft.getState().refused).toEqual([]);
    expect(disk.getSaved().plan.stations.map(({ code }) => code)).toEqual(['C', 'B']);
  });

  test('letting go of what was refused shows what is saved', async () => {
    const disk = openDisk();
    const draft = openPlanDraft(disk);
    void draft.change(recodeStation('A', 'B'));
    await disk.settle();
    draft.drop();
    expect(draft.getState()).toMatchObject({ refused: [], plan: disk.getSaved().plan });
  });

  test('a change from elsewhere is neither overwritten nor lost: both stand after trying once more', async () => {
    const disk = openDisk();
    const draft = openPlanDraft(disk);
    void draft.change(addStation);
    const { plan } = disk.getSaved();
    disk.put({ ...plan, lesson: { ...plan.lesson, title: 'Renamed elsewhere' } });
    await disk.settle();
    expect(draft.getState().refused).toEqual([{ code: 'plan-changed-elsewhere' }]);
    draft.refresh();
    expect(draft.getState().plan.lesson.title).toBe('Renamed elsewhere');
    void draft.retry();
    await disk.settle();
    const { lesson, stations } = disk.getSaved().plan;
    expect([lesson.title, stations.length]).toEqual(['Renamed elsewhere', 3]);
  });

  test('an edit of what somebody else took away does nothing', async () => {
    const disk = openDisk();
    const draft = openPlanDraft(disk);
    const { plan } = disk.getSaved();
    disk.put({ ...plan, ...removeStation('B')(plan) });
    draft.refresh();
    void draft.change(removeStation('B'));
    await disk.settle();
    expect(disk.getSaved().plan.stations.map(({ code }) => code)).toEqual(['A']);
  });
});

describe('taking edits back', () => {
  const settle = () => new Promise((go) => setTimeout(go, 0));
  const openQuick = () => {
    let saved: SavedPlan = { plan: buildSmallPlan(), version: '1' };
    const draft = openPlanDraft({
      getSaved: () => saved,
      save: async (_, plan) => {
        saved = { plan, version: `${saved.version}1` };
        return [];
      },
    });
    return { draft, getTitle: () => draft.getState().plan.lesson.title, getSaved: () => saved.plan };
  };

  test('goes back step by step and forward again; a new edit ends the way forward', async () => {
    const { draft, getTitle, getSaved } = openQuick();
    for (const title of ['One', 'Two']) await draft.change(changeLesson({ title }));
    expect([draft.undo(), getTitle(), draft.undo(), getTitle(), draft.undo()]).toEqual([
      true,
      'One',
      true,
      'Pier circuit',
      false,
    ]);
    expect([draft.redo(), getTitle()]).toEqual([true, 'One']);
    await draft.change(changeLesson({ title: 'Three' }));
    expect([draft.redo(), getTitle()]).toEqual([false, 'Three']);
    await settle();
    expect(getSaved().lesson.title).toBe('Three');
  });

  test('takes back the parts of its edit alone', async () => {
    const { draft, getTitle } = openQuick();
    await draft.change(changeLesson({ title: 'One' }));
    await draft.change(addStation);
    draft.undo();
    expect(draft.getState().plan.stations).toHaveLength(2);
    expect(getTitle()).toBe('One');
  });
});
