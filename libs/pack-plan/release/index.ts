/** Whether a draft may be released: by weights, codes and promises. */
export type { ReleaseDecision } from './decide-release.js';
export { decideRelease } from './decide-release.js';
