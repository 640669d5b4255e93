import type { Finding } from '#trade';
import { english, saidOnce, sentenceOf } from '#words';

const noValue = (id: string, name: string, position: number): Finding =>
  ({
    code: 'item-missing',
    subjects: { at: { kind: 'pick', hang: id, name, hole: 'F' }, model: { kind: 'model', id: 'Grid 14' } },
    numbers: { position },
    date: null,
    what: 'grid',
  }) as unknown as Finding;
const told = (fact: Finding) => ({ code: fact.code, weight: 'look', sentence: sentenceOf(english, fact), fact });

describe('what hangs have alike', () => {
  const [left, right, centre] = [noValue('main-l', 'Main left', 2), noValue('main-r', 'Main right', 2), noValue('centre', 'Centre', 3)];

  it('is said once, with the names of them all, and what differs stays apart', () => {
    const said = saidOnce([left, centre, right].map(told), english).map((each) => each.sentence);
    expect(said).toHaveLength(2);
    expect(said[0]).toContain('Main left and Main right');
    expect(said[1]).toBe(sentenceOf(english, centre));
  });

  it('leaves a single hang as it was said', () => {
    expect(saidOnce([told(left)], english)).toEqual([told(left)]);
  });
});
