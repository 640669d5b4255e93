import { noteHouseTime } from './device-clock.js';
import { newId, requestsOver } from './requests-over.js';

export { Refused } from './refused.js';
export type { AnswerOf } from './requests-over.js';

/** What the screens send, over the browser's own wire. */
export const { request, sendFile, settleRequest } = requestsOver({
  fetch: async (path, init) => {
    const response = await fetch(path, init);
    noteHouseTime(response.headers.get('date'), Date.now());
    return response;
  },
  pause: (milliseconds) => new Promise((done) => setTimeout(done, milliseconds)),
  makeId: newId,
  isOffline: () => !navigator.onLine,
});
