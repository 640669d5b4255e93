/** What a finding, a reason or a refusal is about: ids that never change, and subjects by kind and id. */
export type * from './id.js';
export type * from './subject.js';
export { listSubjects, mainSubjects } from './told.js';
