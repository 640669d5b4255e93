import { type FaultRecord, openFaults } from './index.js';

const fault = (id: number, then: FaultRecord['then'], item = 'B-1'): FaultRecord => ({
  ...{ id, item, then, what: 'dull', pieces: null, moment: '2027-03-08T02:00:00Z', by: 'Wren' },
  kind: then === 'flies' ? 'looks' : 'sound',
});

describe('faults with which an item flies on', () => {
  it('are open until a bench test passes after them', () => {
    const faults = [fault(5, 'bottom'), fault(9, 'flies')];
    expect(openFaults(faults, [{ item: 'B-1', id: 7, passed: true }])).toEqual([faults[1]]);
    expect(openFaults(faults, [{ item: 'B-1', id: 10, passed: true }])).toEqual([]);
  });

  it('are not answered by a test that failed, nor by one of another box', () => {
    const faults = [fault(5, 'bottom')];
    const tests = [
      { item: 'B-1', id: 7, passed: false },
      { item: 'B-2', id: 8, passed: true },
    ];
    expect(openFaults(faults, tests)).toEqual(faults);
  });

  it('what is out has its state and is not told twice', () => {
    expect(openFaults([fault(5, 'out')], [])).toEqual([]);
  });
});
