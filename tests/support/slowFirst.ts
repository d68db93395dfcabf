import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files of a minute and more. The runner goes by size of file where it has not run them before, and the oracle's are the shortest. */
const SLOW = /tests\/(oracle\/|core\/(properties|random-sites|models|crown-group-meshes|advice)\.)/;

/** Starts with the files that take longest, so that no worker is left over with one of them at the end. */
export default class SlowFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const slow = ({ moduleId }: TestSpecification): boolean => SLOW.test(moduleId);
    return [...sorted.filter(slow), ...sorted.filter((file) => !slow(file))];
  }
}
