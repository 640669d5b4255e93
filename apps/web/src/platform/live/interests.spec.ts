import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { meaningOf, toldKinds } from './interests.js';

const show = { queryKey: ['show', 'harbour', 'quay'] };
const progress = { queryKey: ['progress', 'r'] };

describe('what a told change means for a query', () => {
  it('reads again what the change is about, and nothing else', () => {
    expect(meaningOf(['done/r'], progress)).toBe('read again');
    expect(meaningOf(['done/r'], show)).toBe('nothing');
    expect(meaningOf(['done/other'], progress)).toBe('nothing');
    expect(meaningOf(['show/harbour/quay'], show)).toBe('read again');
    expect(meaningOf(['show/harbour/quayside'], show)).toBe('nothing');
    expect(meaningOf(['register'], show)).toBe('stale');
    expect(meaningOf(['done/r'], { queryKey: ['items', '', null] })).toBe('nothing');
  });

  it('a topic covers what stands below it, both ways', () => {
    const item = { queryKey: ['item', 'P-001', 'history'] };
    expect(meaningOf(['item'], item)).toBe('read again');
    expect(meaningOf(['item/P-001'], item)).toBe('read again');
    expect(meaningOf(['item/P-0011'], item)).toBe('nothing');
    expect(meaningOf(['show/harbour/quay'], { queryKey: ['tour', 'harbour'] })).toBe('read again');
  });

  it('after too long away everything is read again', () => {
    expect(meaningOf(['*'], { queryKey: ['wear-rules'] })).toBe('read again');
  });

  it('every query of the screens has its topics', () => {
    const files = readdirSync('apps/web/src', { recursive: true, encoding: 'utf8' }).filter((file) => /(?<!\.spec)\.tsx?$/.test(file));
    const kinds = files.flatMap((file) =>
      [...readFileSync(join('apps/web/src', file), 'utf8').matchAll(/\b(?:queryKey:|key =) \['([^']+)'/g)].map((match) => match[1]!),
    );
    expect(kinds.length).toBeGreaterThan(15);
    expect([...new Set(kinds)].filter((kind) => !toldKinds.includes(kind))).toEqual([]);
  });
});
