import type { Subject, Subjects } from './subject.js';

/** All subjects one after another, the main ones first. */
export const listSubjects = (subjects: Subjects): readonly Subject[] =>
  Object.values(subjects).flatMap((each) => (each === null ? [] : 'kind' in each ? [each] : each));

/** What it is about: one subject, or several of one kind. */
export function mainSubjects(subjects: Subjects): readonly Subject[] {
  const first = Object.values(subjects)[0] ?? [];
  return 'kind' in first ? [first] : first;
}
