import { parentPort, workerData } from 'node:worker_threads';
import { seededRandom } from '#kernel';
import { hostileRequests } from './hostile-requests.js';

/** What a sender is told; what it sends goes out from a thread of its own, so that nobody's clock waits for it. */
export interface Sending {
  readonly address: string;
  readonly cookie: string;
  readonly requests: number;
  readonly atOnce: number;
  readonly seed: number;
}

export interface Sent {
  readonly sent: number;
  /** Kinds that were not answered as they have to be, with what came. */
  readonly wrong: readonly string[];
}

async function send({ address, cookie, requests, atOnce, seed }: Sending): Promise<Sent> {
  const random = seededRandom(seed);
  const wrong: string[] = [];
  let sent = 0;
  const next = async (): Promise<void> => {
    while (sent < requests) {
      // Every kind in turn, then at random.
      const place = sent < hostileRequests.length ? sent : Math.floor(random() * hostileRequests.length);
      sent++;
      const kind = hostileRequests[place];
      if (!kind) continue;
      const answer = await kind.send({ address, cookie }).catch((fault: Error) => ({ status: 0, body: fault.message }));
      // Whoever sends too much at once may be told to come back later.
      if (answer.status !== 503 && (answer.status !== kind.status || !kind.says.test(answer.body)))
        wrong.push(`${kind.what}: ${answer.status} ${answer.body.slice(0, 120)}`);
    }
  };
  await Promise.all(Array.from({ length: atOnce }, next));
  return { sent, wrong };
}

if (parentPort) parentPort.postMessage(await send(workerData as Sending));
