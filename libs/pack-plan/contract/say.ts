import type { Finding, Section, Weight } from './plan.js';

/** A finding in the words of its section. */
export const say = (section: Section, weight: Weight, code: string, subject: string, date: string | null, sentence: string): Finding => ({
  code,
  weight,
  section,
  subject,
  date,
  sentence,
});
export const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
