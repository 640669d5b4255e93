import { newId, requestsOver } from './requests-over.js';

export { Refused } from './refused.js';
export type { AnswerOf } from './requests-over.js';

/** What the screens send, over the browser's own wire. */
export const { request, sendFile, settleRequest } = requestsOver({
  fetch: (path, init) => fetch(path, init),
  pause: (milliseconds) => new Promise((done) => setTimeout(done, milliseconds)),
  makeId: newId,
  isOffline: () => !navigator.onLine,
});
