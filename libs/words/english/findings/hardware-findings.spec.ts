import { hardwareFindings } from './hardware-findings.js';

type Missing = Parameters<(typeof hardwareFindings)['hardware-missing']>[0];
type Differ = Parameters<(typeof hardwareFindings)['travelling-and-fitted-differ']>[0];
type Kept = Parameters<(typeof hardwareFindings)['kept-with-boxes-differs']>[0];

const figures = (sentence: string, wanted: RegExp): number[] => {
  const found = wanted.exec(sentence);
  if (!found) throw new Error(`${sentence} does not say ${wanted.source}`);
  return found.slice(1).map(Number);
};

describe('the figures of a count, as a sentence says them', () => {
  const missingOf = (numbers: Missing['numbers']) =>
    hardwareFindings['hardware-missing']({
      code: 'hardware-missing',
      subjects: { line: { kind: 'line', item: 'lock pin', model: 'Lock pin 8', size: null }, lots: [] },
      numbers,
      date: '2027-03-01',
      days: { from: '2027-03-01', to: '2027-03-17' },
      outOfUse: [],
    });

  it.each([
    [16, 0, 60, 58, 14],
    [63, 3, 69, 9, 6],
    [12, 1, 12, 0, 1],
    [20, 2, 30, 20, 5],
    [9, 0, 2, 1, 8],
  ])(
    '%i that travel and %i spare, %i on hand of which %i stay: %i missing is wanted less to be had',
    (travelling, spares, onHand, keptAtHome, missing) => {
      const said = missingOf({ missing, travelling, spares, onHand, keptAtHome });
      const [lacking] = figures(said, /: (\d+) missing/);
      const [wanted, travel, spare] = figures(said, /Wanted: (\d+), (\d+) to travel and (\d+) spare/);
      const [had] = figures(said, /To be had[^:]*: (\d+)/);
      expect(travel! + spare!).toBe(wanted);
      expect(wanted! - had!).toBe(lacking);
      if (said.includes('for of')) {
        const [hand, stay] = figures(said, /for of (\d+) on hand (\d+) stay/);
        expect(hand! - stay!).toBe(had);
      }
    },
  );

  it('says the sum that was unclear as one that adds up', () => {
    expect(missingOf({ missing: 14, travelling: 16, spares: 0, onHand: 60, keptAtHome: 58 })).toBe(
      'lock pin (Lock pin 8): 14 missing from 2027-03-01 to 2027-03-17. Wanted: 16, 16 to travel and 0 spare. To be had: 2, for of 60 on hand 58 stay at home with their boxes and carts.',
    );
  });

  it.each([
    [63, 3, 58, 2],
    [40, 0, 44, -4],
  ])('%i travel, %i stay in their box, %i are fitted: %i over', (travelling, staysInBox, fitted, difference) => {
    const said = hardwareFindings['travelling-and-fitted-differ']({
      counts: [{ item: 'pin', model: 'Pin 12', travelling, staysInBox, fitted, difference }],
    } as unknown as Differ);
    const left = staysInBox === 0 ? figures(said, /: (\d+) travel/)[0]! : figures(said, /leaves (\d+)/)[0]!;
    const [up, off] = figures(said, /\. (\d+) are fitted: (\d+) too/);
    expect(left - up!).toBe(said.includes('too few') ? -off! : off);
  });

  it.each([
    [60, 58],
    [50, 58],
  ])('%i on file as kept with boxes that take %i', (onFile, byModels) => {
    const said = hardwareFindings['kept-with-boxes-differs']({
      subjects: { model: { kind: 'model', id: 'Lock pin 8' } },
      numbers: { onFile, byModels },
    } as unknown as Kept);
    const [file, take, off] = figures(said, /: (\d+) on file .* take (\d+): (\d+) too/);
    expect(file! - take!).toBe(said.includes('too few') ? -off! : off);
  });
});
