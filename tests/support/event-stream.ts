import type { Agent } from './test-app.js';

/** A stream of server-sent events that is being read: its topics as they come, and the last position. */
export interface EventStream {
  readonly status: number;
  position(): string | undefined;
  /** Waits until this topic has been told; gives all that came so far. */
  until(topic: string): Promise<string[]>;
  /** Waits for the first message, which tells what was missed. */
  opened(): Promise<string[]>;
  /** Waits until the house has ended it; gives all topics that came. */
  ended(): Promise<string[]>;
  close(): void;
}

export async function openEventStream(who: Agent, headers: Record<string, string> = {}): Promise<EventStream> {
  const abort = new AbortController();
  const response = await who.fetch('/api/events', { headers, signal: abort.signal });
  const topics: string[] = [];
  let position: string | undefined;
  let messages = 0;
  let hasEnded = false;
  const wakes = new Set<() => void>();
  const read = async () => {
    let rest = '';
    for await (const piece of response.body!.pipeThrough(new TextDecoderStream())) {
      const blocks = (rest + piece).split('\n\n');
      rest = blocks.pop()!;
      for (const block of blocks) {
        const fields = new Map(block.split('\n').map((line) => [line.slice(0, line.indexOf(': ')), line.slice(line.indexOf(': ') + 2)]));
        if (fields.has('data') && !fields.has('event')) {
          messages++;
          topics.push(...(JSON.parse(fields.get('data')!) as string[]));
          position = fields.get('id');
        }
      }
      for (const wake of wakes) wake();
    }
  };
  if (response.ok)
    void read()
      .catch(() => undefined)
      .then(() => {
        hasEnded = true;
        for (const wake of wakes) wake();
      });
  const when = (isSo: () => boolean) =>
    new Promise<string[]>((done) => {
      const look = () => {
        if (!isSo()) return;
        wakes.delete(look);
        done([...topics]);
      };
      wakes.add(look);
      look();
    });
  return {
    status: response.status,
    position: () => position,
    until: (topic) => when(() => topics.includes(topic)),
    opened: () => when(() => messages > 0),
    ended: () => when(() => hasEnded),
    close: () => abort.abort(),
  };
}
