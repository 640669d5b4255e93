import { seededRandom } from '#kernel';
import { type Words, english } from '#words';

/** A second table of words in which every sentence and every name is a random text: what decides must not notice. */
export function nonsenseWords(seed: number): Words {
  const random = seededRandom(seed);
  const text = () => `${Math.floor(random() * 36 ** 8).toString(36)} ${Math.floor(random() * 36 ** 8).toString(36)}`;
  const muddle = (value: unknown): unknown => {
    if (typeof value === 'function') return text;
    if (typeof value === 'string') return text();
    return Object.fromEntries(Object.entries(value as object).map(([key, each]) => [key, muddle(each)]));
  };
  return muddle(english) as Words;
}

const worded = new Set([
  'sentence',
  'sentences',
  'subject',
  'what',
  'why',
  'where',
  'reason',
  'tag',
  'axle',
  'name',
  'mostAt',
  'leastAt',
  'mostLinkAt',
  'leastLinkAt',
  'mostFrontPinAt',
]);

/** A plan, an answer or a list without its words: the data that everything is decided by. */
export const withoutWords = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (key, each: unknown) => (worded.has(key) || (key === 'at' && typeof each === 'string') ? undefined : each)),
  );
