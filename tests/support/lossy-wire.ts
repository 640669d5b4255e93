import { setTimeout as pause } from 'node:timers/promises';
import { seededRandom } from '#kernel';
import { newId, requestsOver } from '../../apps/web/src/platform/requests-over.js';
import { saveTour, tourQuery } from '../../apps/web/src/features/tour/edit/operations.js';
import type { TourStore } from '../../apps/web/src/features/tour/edit/save-over.js';
import type { Agent } from './test-app.js';

export interface Losses {
  readonly latencyMs: number;
  /** How many of the requests get lost: half of them on the way there, half on the way back. */
  readonly lost: number;
  readonly seed: number;
  /** How long the pauses of the screens are here. */
  readonly pauses?: number;
}

/** The tours of a house as a browser has them over a line that is slow and loses requests. */
export function toursOver(
  agent: Agent,
  { latencyMs, lost, seed, pauses = 1 }: Losses,
): TourStore & { readonly fates: { sent: number; lost: number } } {
  const random = seededRandom(seed);
  const fates = { sent: 0, lost: 0 };
  const { request } = requestsOver({
    pause: (milliseconds) => pause(milliseconds * pauses),
    makeId: newId,
    isOffline: () => false,
    fetch: async (path, init) => {
      const fate = random();
      fates.sent++;
      if (fate < lost) fates.lost++;
      await pause(latencyMs / 2);
      if (fate < lost / 2) throw new TypeError('fetch failed');
      const answer = await agent.fetch(path, init);
      await pause(latencyMs / 2);
      if (fate < lost) throw new TypeError('terminated');
      return answer;
    },
  });
  return {
    fates,
    read: async (id) => (await request(tourQuery, { id })).tour,
    save: async (tour, expectedVersion) => (await request(saveTour, { tour, expectedVersion })).saveTour,
  };
}
