import { type Finding, mainSubjects, sectionOf, weightOf } from '#trade';
import { type Words, sentenceOf } from '#words';
import type { ToldFinding } from '../contract/index.js';

/** Findings with their weight and in words: what everybody is shown, and what is printed again years later. */
export const tellFindings = (findings: readonly Finding[], words: Words): readonly ToldFinding[] =>
  findings.map((fact) => ({
    code: fact.code,
    weight: weightOf(fact),
    section: sectionOf(fact),
    subject: words.about(mainSubjects(fact.subjects)),
    date: fact.date,
    sentence: sentenceOf(words, fact),
    fact,
  }));
