import { TestEnvironment } from 'jest-environment-node';

/** What jest tells an environment of: the few things that are read. */
interface TestEvent {
  readonly name: string;
  readonly test: { mode?: 'skip' | 'only' | 'todo' | null | undefined };
}

/** For seeded faults: after the first test that fails, the rest of its file is skipped. */
export default class FailFastEnvironment extends TestEnvironment {
  private hasFailed = false;

  handleTestEvent(event: TestEvent): void {
    if (event.name === 'test_fn_failure' || event.name === 'hook_failure') this.hasFailed = true;
    if (event.name === 'test_start' && this.hasFailed) event.test.mode = 'skip';
  }
}
