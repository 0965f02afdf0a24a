import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * Files of the windows come first and those of a project together: workers that go on within a project keep its
 * modules, and short files at the end let all workers end together.
 */
export class WindowsFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isWindow = ({ project }: TestSpecification) => project.name === 'window';
    return [...sorted.filter(isWindow), ...sorted.filter((file) => !isWindow(file))];
  }
}
