import { setTimeout as pause } from 'node:timers/promises';

/** The browser's own pause before it comes back, as the stream asks for. */
const comeBackAfterMs = 500;

/** A device at one API's stream of changes: comes back with its position when the stream breaks, as a browser does. */
export class ChangeListener {
  reconnects = 0;
  private readonly waiting = new Set<{ topic: string; seen: () => void }>();
  private readonly stopping = new AbortController();
  private position: string | undefined;

  constructor(
    private readonly address: string,
    private readonly cookie: string,
  ) {
    void this.listen();
  }

  /** Until a topic is told, or everything; gives whether it was within so many milliseconds. */
  async hears(topic: string, withinMs: number): Promise<boolean> {
    let seen = (): void => undefined;
    const heard = new Promise<true>((resolve) => (seen = () => resolve(true)));
    const one = { topic, seen };
    this.waiting.add(one);
    const isHeard = await Promise.race([heard, pause(withinMs, false as const, { ref: false })]);
    this.waiting.delete(one);
    return isHeard;
  }

  stop(): void {
    this.stopping.abort();
  }

  private async listen(): Promise<void> {
    for (; !this.stopping.signal.aborted; this.reconnects++) {
      await this.once().catch(() => undefined);
      await pause(comeBackAfterMs);
    }
  }

  private async once(): Promise<void> {
    const response = await fetch(`${this.address}/api/events`, {
      headers: { cookie: this.cookie, ...(this.position === undefined ? {} : { 'last-event-id': this.position }) },
      signal: this.stopping.signal,
    });
    if (!response.ok || !response.body) return;
    let unread = '';
    const text = response.body.pipeThrough(new TextDecoderStream());
    for await (const piece of text) {
      const parts = (unread + piece).split('\n\n');
      unread = parts.pop() ?? '';
      for (const part of parts) this.read(part);
    }
  }

  private read(message: string): void {
    const id = /^id: (.*)$/m.exec(message)?.[1];
    const data = /^data: (.*)$/m.exec(message)?.[1];
    if (id === undefined || data === undefined) return;
    this.position = id;
    const topics = JSON.parse(data) as string[];
    for (const each of this.waiting) if (topics.includes(each.topic) || topics.includes('*')) each.seen();
  }
}
