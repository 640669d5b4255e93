import { type SeasonAnswer, type SeasonCase, placeOn, solveSeason, verifySeason } from '#inspection-calendar';
import { addPeriod, eachDay, readPeriod } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import { type SeasonSize, madeSeason } from '../../../apps/cli/bench/visits/made-season.js';

const small: SeasonSize = { tours: 5, items: 7, visits: 8, from: '2027-03-01', to: '2027-09-30' };
const large: SeasonSize = { tours: 40, items: 80, visits: 36, from: '2027-01-01', to: '2027-12-31' };
const oneTour = {
  id: 'T',
  depot: 'Ferry Lane',
  shows: [
    { id: 'a', from: '2027-05-10', to: '2027-05-11' },
    { id: 'b', from: '2027-05-14', to: '2027-05-14' },
  ],
};
const onTour = { from: '2027-05-06', to: '2027-05-18', tour: 'T', isHold: false };

/** The sets of visits that serve an item on each day on which it is promised, each made from the calendar alone; null where a day has none. */
function setsOf(problem: SeasonCase, answer: SeasonAnswer, number: number): string[][] | null {
  const item = problem.items[number]!;
  const state = answer.states[number]!;
  if (state.state === 'no interval') return [];
  const days = [...new Set(item.stays.flatMap((stay) => eachDay(stay.from, stay.to)))].filter(
    (on) => on >= problem.window.from && on <= problem.window.to,
  );
  if (days.length === 0) return [];
  if (state.state === 'failed') return null;
  const tours = new Map(problem.tours.map((each) => [each.id, each]));
  const records = [...item.examinations, ...item.events].map((each) => each.on);
  const sets = days
    .sort()
    .filter((on) => state.dueOn === null || state.dueOn < on)
    .map((on) =>
      problem.visits
        .filter((visit) => visit.on < on && records.every((each) => each < visit.on))
        .filter((visit) => JSON.stringify(placeOn(item, visit.on, tours)) === JSON.stringify(visit.at))
        .filter((visit) => item.intervals.every((each) => addPeriod(visit.on, readPeriod(each)!) >= on))
        .map((visit) => visit.id),
    );
  return sets.some((each) => each.length === 0) ? null : sets;
}

const needsOf = (problem: SeasonCase, answer: SeasonAnswer): string[][][] =>
  problem.items.flatMap((_item, number) => {
    const sets = setsOf(problem, answer, number);
    return sets && sets.length > 0 ? [sets] : [];
  });

/** Every set of visits is tried: the least number that serves all, and the fewest examinations on so many. */
function tryAll({ visits }: SeasonCase, needs: readonly (readonly (readonly string[])[])[]): { visits: number; examinations: number } {
  const fewestOf = (sets: readonly (readonly string[])[], chosen: readonly string[]): number => {
    let best = Infinity;
    for (let some = 0; some < 2 ** chosen.length; some++) {
      const own = chosen.filter((_each, index) => (some >> index) & 1);
      if (own.length < best && sets.every((set) => set.some((each) => own.includes(each)))) best = own.length;
    }
    return best;
  };
  let best = { visits: Infinity, examinations: Infinity };
  for (let some = 0; some < 2 ** visits.length; some++) {
    const chosen = visits.filter((_each, index) => (some >> index) & 1).map((each) => each.id);
    if (chosen.length > best.visits || !needs.every((sets) => sets.every((set) => set.some((each) => chosen.includes(each))))) continue;
    const examinations = needs.reduce((sum, sets) => sum + fewestOf(sets, chosen), 0);
    if (chosen.length < best.visits || examinations < best.examinations) best = { visits: chosen.length, examinations };
  }
  return best;
}

describe('visits over a season', () => {
  it.each([1, 2, 3, 4, 5, 6])('are the fewest of all sets of visits, with the fewest examinations (season %i)', (seed) => {
    const problem = madeSeason(seed, small);
    const answer = solveSeason(problem);
    expect(verifySeason(problem, answer)).toEqual([]);
    const needs = needsOf(problem, answer);
    const { count } = answer;
    expect({ visits: count.visits, examinations: count.examinations }).toEqual(tryAll(problem, needs));
    expect([count.visitsAtLeast, count.examinationsAtLeast]).toEqual([count.visits, count.examinations]);
    const lost = problem.items.filter((_item, number) => setsOf(problem, answer, number) === null).map((each) => each.id);
    expect(answer.notSaved.map((each) => each.id)).toEqual(lost);
  });

  it.each([11, 12])('agree with HiGHS on larger seasons (season %i)', async (seed) => {
    const problem = madeSeason(seed, large);
    const answer = solveSeason(problem);
    expect(verifySeason(problem, answer)).toEqual([]);
    const needs = needsOf(problem, answer);
    const rows = [...new Set(needs.flat().map((set) => set.join(' + ')))];
    const names = problem.visits.map((each) => each.id);
    const solver = await loadIntegerProgramSolver();
    const visits = solver.solve(
      `Minimize\nobj: ${names.join(' + ')}\nSubject To\n${rows.map((row, index) => `c${index}: ${row} >= 1`).join('\n')}\nBinary\n${names.join(' ')}\nEnd\n`,
      { timeLimitSeconds: 60 },
    );
    expect(visits.status).toBe('optimal');
    expect(answer.count.visits).toBe(Math.round(visits.objective!));
    expect(answer.count.visitsAtLeast).toBe(answer.count.visits);
    const own = needs.map((sets, number) => [...new Set(sets.map((set) => set.map((each) => `x${number}${each}`).join(' + ')))]);
    const seen = [...new Set(own.flat().flatMap((row) => row.split(' + ')))];
    const all = [...rows, ...own.flat()].map((row) => `${row} >= 1`);
    const links = seen.map((each) => `${each.replace(/^x\d+/, '')} - ${each} >= 0`);
    const text = `Minimize\nobj: ${seen.join(' + ')}\nSubject To\n${[...all, ...links, `${names.join(' + ')} <= ${answer.count.visits}`].map((row, index) => `c${index}: ${row}`).join('\n')}\nBinary\n${[...names, ...seen].join('\n')}\nEnd\n`;
    const examinations = solver.solve(text, { timeLimitSeconds: 60 });
    expect(examinations.status).toBe('optimal');
    const { examinations: found, examinationsAtLeast } = answer.count;
    expect(found).toBeGreaterThanOrEqual(Math.round(examinations.objective!));
    expect(examinationsAtLeast).toBeLessThanOrEqual(Math.round(examinations.objective!));
    if (examinationsAtLeast === found) expect(found).toBe(Math.round(examinations.objective!));
  });

  it.each([
    ['2027-05-05', { kind: 'depot', depot: 'Northgate' }],
    ['2027-05-06', { kind: 'depot', depot: 'Ferry Lane' }],
    ['2027-05-09', { kind: 'depot', depot: 'Ferry Lane' }],
    ['2027-05-11', { kind: 'show', tour: 'T', show: 'a' }],
    ['2027-05-12', { kind: 'away' }],
    ['2027-05-14', { kind: 'show', tour: 'T', show: 'b' }],
    ['2027-05-15', { kind: 'depot', depot: 'Ferry Lane' }],
    ['2027-05-19', { kind: 'depot', depot: 'Northgate' }],
  ])('find an item on %s where its promises put it', (on, place) => {
    expect(placeOn({ depot: 'Northgate', stays: [onTour] }, on, new Map([['T', oneTour]]))).toEqual(place);
  });

  const item = { id: 'H', depot: 'Ferry Lane', intervals: ['P6M'], events: [], stays: [onTour] };
  const seasonOf = (record: string, visits: SeasonCase['visits'], more: object = {}): SeasonAnswer =>
    solveSeason({
      window: { from: '2027-04-01', to: '2027-06-30' },
      tours: [oneTour],
      visits,
      items: [{ ...item, examinations: [{ on: record, outcome: 'pass' }], ...more }],
    });
  const atDepot = (on: string) => ({ id: on, on, at: { kind: 'depot' as const, depot: 'Ferry Lane' } });

  it('leave what runs out in its depot until it is needed', () => {
    const answer = seasonOf('2026-10-05', [atDepot('2027-04-03'), atDepot('2027-05-05')]);
    expect(answer.visits).toMatchObject([
      { on: '2027-05-05', items: [{ id: 'H', until: '2027-04-05', carriesTo: '2027-11-05', neededOn: '2027-05-06' }] },
    ]);
    expect(answer.withIdle).toMatchObject({ visits: 1, notSaved: 0 });
    expect(answer.withIdle.examinations).toBe(1);
  });

  it('come to a show where that alone is in time', () => {
    const show = { id: 'at the show', on: '2027-05-11', at: { kind: 'show' as const, tour: 'T', show: 'a' } };
    expect(seasonOf('2026-11-12', [atDepot('2027-05-13'), show]).visits).toMatchObject([{ id: 'at the show' }]);
  });

  it('say why an item is not saved, and when it could be seen', () => {
    expect(seasonOf('2026-11-12', [atDepot('2027-05-12')]).notSaved).toEqual([
      {
        ...{ id: 'H', code: 'elsewhere', neededOn: '2027-05-13' },
        chances: [
          { from: '2026-11-13', to: '2027-05-09', at: { kind: 'depot', depot: 'Ferry Lane' } },
          { from: '2027-05-10', to: '2027-05-11', at: { kind: 'show', tour: 'T', show: 'a' } },
        ],
      },
    ]);
    expect(seasonOf('2026-11-12', [atDepot('2027-05-16')]).notSaved).toMatchObject([{ code: 'nobody-comes' }]);
    expect(seasonOf('2026-11-12', [], { examinations: [{ on: '2026-11-12', outcome: 'fail' }] }).notSaved).toMatchObject([
      { code: 'failed', neededOn: '2027-05-06' },
    ]);
  });

  it('are seen to be wrong by the checker when a visit is left out or moved', () => {
    const problem = madeSeason(11, large);
    const answer = solveSeason(problem);
    const [first, ...others] = answer.visits;
    expect(others.length).toBeGreaterThan(0);
    expect(verifySeason(problem, { ...answer, visits: others })).not.toEqual([]);
    expect(verifySeason(problem, { ...answer, visits: [{ ...first!, on: '2027-12-30' }, ...others] })).not.toEqual([]);
  });
});
