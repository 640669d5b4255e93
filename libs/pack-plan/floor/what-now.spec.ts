import { type FloorState, whatNow } from './what-now.js';

const fresh: FloorState = {
  barred: [],
  moves: [{ box: 'B1', from: 'floor', to: 'K1' }],
  loads: [
    { id: 'L1', cart: 'K1', isConfirmed: true },
    { id: 'L2', cart: 'K2', isConfirmed: false },
  ],
  trucks: [
    { id: 'T1', rows: [{ number: 1, isIn: true }] },
    {
      id: 'T2',
      rows: [
        { number: 1, isIn: true },
        { number: 2, isIn: false },
      ],
    },
  ],
  hangs: [
    { id: 'left', name: 'Left', holds: 4, ticked: 4 },
    { id: 'right', name: 'Right', holds: 4, ticked: 1 },
  ],
};
const job = (state: FloorState, code: string) => whatNow(state).jobs.find((each) => each.code === code);

describe('what to do now', () => {
  it('is in the order of the work, with what is left and what comes next', () => {
    expect(whatNow(fresh)).toEqual({
      next: 'moves',
      jobs: [
        { code: 'moves', left: 1, next: fresh.moves![0], isPossible: true },
        { code: 'carts', left: 1, of: 2, next: { load: 'L2', cart: 'K2' } },
        { code: 'rows', left: 1, of: 3, next: { truck: 'T2', row: 2 } },
        { code: 'lift', left: 3, of: 8, next: { hang: 'right', name: 'Right' } },
        { code: 'return', left: null },
      ],
    });
  });

  it('goes on with the next kind of work when one is done', () => {
    const moved = { ...fresh, moves: [] };
    expect(whatNow(moved).next).toBe('carts');
    const confirmed = { ...moved, loads: fresh.loads.map((each) => ({ ...each, isConfirmed: true })) };
    expect(whatNow(confirmed).next).toBe('rows');
    const loaded = { ...confirmed, trucks: [] };
    expect(whatNow(loaded).next).toBe('lift');
    expect(whatNow({ ...loaded, hangs: [] }).next).toBe('return');
  });

  it('says first what must not be loaded; that is nobody’s next', () => {
    const { jobs, next } = whatNow({ ...fresh, barred: ['P-047'] });
    expect(jobs[0]).toEqual({ code: 'do-not-load', left: 1, items: ['P-047'] });
    expect(next).toBe('moves');
  });

  it('a hang that is not read yet is not one without steps', () => {
    expect(job({ ...fresh, hangs: null }, 'lift')).toEqual({ code: 'lift', left: null, of: 0, next: null });
    expect(job({ ...fresh, hangs: [] }, 'lift')).toMatchObject({ left: 0 });
  });

  it('a list that cannot be made is not one of no moves', () => {
    expect(job({ ...fresh, moves: null }, 'moves')).toMatchObject({ isPossible: false, left: 0 });
    expect(job({ ...fresh, moves: [] }, 'moves')).toMatchObject({ isPossible: true, left: 0 });
    expect(whatNow({ ...fresh, moves: null }).next).toBe('carts');
  });
});
