import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { SpecReply, SpecRequest } from './spec-runner.js';

/** A warm process that runs specs in a folder; one that outlasts its time is ended and the next request gets a fresh one. */
export class SpecProcess {
  private child: ChildProcess | undefined;
  private answered = 0;

  constructor(private readonly folder: string) {}

  /** `undefined` when the time was over, or the process died. */
  run(request: SpecRequest, seconds: number): Promise<SpecReply | undefined> {
    // Each run leaves modules behind.
    if (this.answered >= 50 || this.child?.connected === false) this.end();
    const child = (this.child ??= this.start());
    return new Promise((resolve) => {
      const done = (reply: SpecReply | undefined): void => {
        clearTimeout(timer);
        child.removeAllListeners();
        // What it says after its answer is nobody's.
        child.on('error', () => undefined);
        this.answered++;
        if (reply === undefined) this.end();
        resolve(reply);
      };
      const timer = setTimeout(() => done(undefined), seconds * 1000);
      child.once('message', (reply: SpecReply) => done(reply));
      child.once('exit', () => done(undefined));
      child.once('error', () => done(undefined));
      child.send(request);
    });
  }

  end(): void {
    this.child?.kill('SIGKILL');
    this.child = undefined;
    this.answered = 0;
  }

  private start(): ChildProcess {
    return fork(fileURLToPath(new URL('./spec-runner.js', import.meta.url)), {
      cwd: this.folder,
      execArgv: ['--experimental-vm-modules', '--no-warnings'],
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    });
  }
}
