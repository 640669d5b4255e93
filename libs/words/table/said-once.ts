import { canonicalJson } from '#kernel';
import { type Finding, type HangSubject, type Subject, listSubjects } from '#trade';
import { type Words, sentenceOf } from './words.js';

interface Told {
  readonly code: string;
  readonly weight: string;
  readonly sentence: string;
  readonly fact: { readonly code: string; readonly subjects: object };
}

/** The hang that a subject belongs to. */
function hangOf(subject: Subject): Pick<HangSubject, 'id' | 'name'> | null {
  if (subject.kind === 'hang') return { id: subject.id, name: subject.name };
  return subject.kind === 'pick' || subject.kind === 'joint' ? { id: subject.hang, name: subject.name } : null;
}

/** Every text of a fact written anew. */
function rewritten<T>(value: T, write: (text: string) => string): T {
  if (typeof value === 'string') return write(value) as T;
  if (Array.isArray(value)) return value.map((each: unknown) => rewritten(each, write)) as T;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, rewritten(each as unknown, write)])) as T;
}

/** What the hangs of a show have word for word alike (left and right, as a rule) is said once, with the names of them all. Places of the first of each stay. */
export function saidOnce<T extends Told>(findings: readonly T[], words: Words): readonly T[] {
  const groups = new Map<string, { readonly first: T; readonly names: string[] }>();
  for (const [index, each] of findings.entries()) {
    const hangs = new Map(
      listSubjects(each.fact.subjects as never)
        .map(hangOf)
        .filter((hang) => hang !== null)
        .map((hang) => [hang.id as string, hang]),
    );
    const [hang] = hangs.values();
    const isOfOne = hangs.size === 1 && hang !== undefined && each.fact.code in words.findings;
    const blank = (text: string) => (hang ? text.replaceAll(hang.name, '\u0001').replaceAll(hang.id, '\u0002') : text);
    const key = isOfOne ? `${each.weight} ${canonicalJson(rewritten(each.fact, blank))}` : `${index}`;
    const known = groups.get(key);
    if (known && hang) known.names.push(hang.name);
    else groups.set(key, { first: each, names: hang && isOfOne ? [hang.name] : [] });
  }
  return [...groups.values()].map(({ first, names: [own = '', ...others] }) => {
    if (others.length === 0) return first;
    const all = [...[own, ...others].slice(0, -1)].join(', ').concat(' and ', others.at(-1) ?? '');
    const fact = rewritten(first.fact, (text) => text.replaceAll(own, all)) as Finding;
    return { ...first, sentence: sentenceOf(words, fact) };
  });
}
