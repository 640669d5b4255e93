import { firstStep, stepBack, stepOn, stepTo } from './steps-of-edits.js';

const same = (one: string, other: string): boolean => one === other;

describe('edits step by step', () => {
  it('go back to the first and on to the last', () => {
    const made = ['b', 'c', 'c', 'd'].reduce((steps, each) => stepTo(steps, each, same), firstStep('a'));
    const back = stepBack(stepBack(stepBack(made)));
    expect([made.now, back.now, stepBack(back).now]).toEqual(['d', 'a', 'a']);
    expect(stepOn(stepOn(stepOn(stepOn(back)))).now).toBe('d');
  });

  it('another edit gives up what was taken back', () => {
    const made = ['b', 'c'].reduce((steps, each) => stepTo(steps, each, same), firstStep('a'));
    const other = stepTo(stepBack(made), 'x', same);
    expect(stepOn(other).now).toBe('x');
    expect(stepBack(other).now).toBe('b');
  });
});
