import fc from 'fast-check';
import { type TickKey, moveKey, rowKey, stepKey, tickKeyOf, tickKinds, tickText } from './tick-key.js';

const step = { key: '', text: 'Lift', hold: false, load: null };
/** A plan as far as it can be ticked: trucks T1 and T10, hangs whose ids look like keys. */
const plan = {
  truck: { trucks: ['T1', 'T10', 'T1 row 1'].map((id) => ({ id, rows: [{ number: 1 }, { number: 10 }] })) },
  picks: { hangs: ['Main', 'Main up', 'T1'].map((hang) => ({ hang, runningOrder: { goingUp: [step, step], comingDown: [step] } })) },
  carts: { moves: [{ number: 1 }, { number: 2 }] },
} as never;

describe('keys of ticks', () => {
  it('are equal as text only where they are equal, whatever the ids are', () => {
    const key = fc.record({ kind: fc.constantFrom(...tickKinds), subject: fc.string(), place: fc.integer({ min: 1, max: 500 }) });
    fc.assert(
      fc.property(key, key, (a: TickKey, b: TickKey) => {
        const same = a.kind === b.kind && a.subject === b.subject && a.place === b.place;
        expect(tickText(a) === tickText(b)).toBe(same);
      }),
    );
  });

  it('are read as they are written now', () => {
    for (const key of [rowKey('T10', 1), rowKey('T1', 10), stepKey('Main up', 'up', 2), stepKey('T1', 'down', 1), moveKey(2)])
      expect(tickKeyOf(plan, tickText(key))).toEqual(key);
  });

  it('are read as they were written up to version 0.1', () => {
    expect(tickKeyOf(plan, 'T10 row 1')).toEqual(rowKey('T10', 1));
    expect(tickKeyOf(plan, 'Main up 2')).toEqual(stepKey('Main', 'up', 2));
    expect(tickKeyOf(plan, 'Main down 1')).toEqual(stepKey('Main', 'down', 1));
    expect(tickKeyOf(plan, 'move 2')).toEqual(moveKey(2));
  });

  it('are none of what the plan does not have', () => {
    for (const text of ['T1', 'T1 row 2', 'row:T1:2', 'row:T:1', 'step-up:Main:3', 'move 3', '', 'row:T1'])
      expect(tickKeyOf(plan, text)).toBeUndefined();
  });
});
