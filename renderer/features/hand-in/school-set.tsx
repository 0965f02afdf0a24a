import type { DeskView } from '../../../src-core/contract/desk-view.ts';
import type { HandInPreview } from '../../../src-core/contract/hand-in-view.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { SET } from '../../text/english/hand-in-set.ts';
import { FolderButton } from '../../ui/folder-button.tsx';
import type { HandInChoice } from './use-choice.ts';
import { useUploadedSet } from './use-uploaded-set.ts';

type School = NonNullable<Extract<HandInPreview, { kind: 'oneroster' }>['school']>;

/** The school's own set that the marks are built on: where it is, which of its classes and categories they go to. */
export function SchoolSet({
  choice,
  school,
  desk,
  deskView,
}: {
  readonly choice: HandInChoice;
  /** Null: none is chosen, or it cannot be read. */
  readonly school: School | null;
  readonly desk: LessonDesk;
  readonly deskView: DeskView;
}) {
  const take = (token: string) => choice.setSchool({ token, classId: null, category: null });
  const upload = useUploadedSet(desk, take);
  return (
    <section className="school" aria-label={SET.school}>
      <h3>{SET.school}</h3>
      <p className="read">{school ? SET.schoolIs(school.name, school.version) : SET.schoolWhy}</p>
      {school && <SchoolChoices choice={choice} school={school} />}
      {school && school.faultCount > 0 && <p className="cap">{SET.schoolFaults(school.faultCount)}</p>}
      <div className="rem">
        {deskView.takesUploads && (
          <label>
            <span className="vh">{SET.archive}</span>
            <input
              type="file"
              accept=".zip,application/zip"
              onChange={({ target }) => {
                const [file] = target.files ?? [];
                if (file) void upload(file);
              }}
            />
          </label>
        )}
        <FolderButton
          client={desk.client}
          deskView={deskView}
          purpose="school-set"
          onChoose={({ token }) => take(token)}
        >
          {SET.folder}
        </FolderButton>
      </div>
    </section>
  );
}

function SchoolChoices({ choice, school }: { readonly choice: HandInChoice; readonly school: School }) {
  const { classes, categories, classId } = school;
  const { what } = choice;
  const category = what.kind === 'oneroster' ? what.category : null;
  return (
    <div className="choices-line">
      {classes.length > 0 && (
        <label>
          {SET.classIs}
          <select
            className="field"
            value={classId ?? ''}
            onChange={({ currentTarget }) => choice.setSchool({ classId: currentTarget.value })}
          >
            {classId === null && <option value="">{SET.chooseClass}</option>}
            {classes.map(({ id, title, pupils }) => (
              <option key={id} value={id}>
                {SET.classOf(title, pupils)}
              </option>
            ))}
          </select>
        </label>
      )}
      {categories.length > 1 && (
        <label>
          {SET.categoryIs}
          <select
            className="field"
            value={category ?? ''}
            onChange={({ currentTarget }) => choice.setSchool({ category: currentTarget.value || null })}
          >
            <option value="">{SET.ownCategory}</option>
            {categories.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  );
}
