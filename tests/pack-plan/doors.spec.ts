import { type GatedItem, judge } from '#inspection-calendar';
import { addDays } from '#kernel';
import { type BarredItem, barredItems, decideRelease, makePackPlan, whyNotUsable } from '#pack-plan';
import { type Item, type ItemKind, type TourFile, itemKinds } from '#tour-file';
import { loadIntegerProgramSolver } from '#runtime';
import { demoTour } from '../support/demo-tour.js';

type Change = Partial<Omit<GatedItem, 'id' | 'kind'>>;

const show = demoTour().tour.shows[0]!;
const { prepFrom, returnTo } = demoTour().tour;
const seen = addDays(prepFrom, -30);

const handedOver = { by: 'lender' as const, delivered: { on: seen, condition: 'clean', by: 'N. N.' } };

/** Every state that bars flight, as it comes on file. */
const states: Readonly<Record<string, Change>> = {
  quarantined: { state: 'quarantined', reason: 'cracked' },
  'in repair': { state: 'in repair' },
  retired: { state: 'retired' },
  'itself not accepted': { unaccepted: 'item' },
  'of a model not accepted': { unaccepted: 'model' },
  failed: { examinations: [{ on: seen, outcome: 'fail' }] },
  'shock-loaded since': { examinations: [{ on: seen, outcome: 'pass' }], events: [{ on: addDays(seen, 1), what: 'fell' }] },
  'shock-loaded on the day of its examination': { examinations: [{ on: seen, outcome: 'pass' }], events: [{ on: seen, what: 'fell' }] },
  'shock-loaded and never examined': { examinations: [], events: [{ on: seen, what: 'fell' }] },
  'never examined, with an interval': { examinations: [], intervals: ['P1Y'] },
  'overdue, with an interval': { examinations: [{ on: addDays(prepFrom, -400), outcome: 'pass' }], intervals: ['P1Y'] },
  'with a defect due before the show': { examinations: [{ on: seen, outcome: 'pass', defectBy: addDays(show.from, -1) }] },
  'kit of others, paper missing': { lent: { ...handedOver } },
  'kit of others, given back': { lent: { ...handedOver, cleared: {}, givenBack: { ...handedOver.delivered } } },
  'hired until the day before': { hire: { from: seen, to: addDays(show.from, -1) } },
  'hired too late': { hire: { from: addDays(show.to, 1), to: returnTo } },
};

/** Of each kind that the register knows, one of the demo. */
const one = (file: TourFile, kind: ItemKind): Item | undefined =>
  file.items.find((each) => each.kind === kind && each.state === 'in service' && each.events.length === 0);

/** The file with one item in a state. */
function inState(kind: ItemKind, change: Change): { readonly file: TourFile; readonly item: Item } {
  const file = structuredClone(demoTour());
  const item = one(file, kind);
  if (!item) throw new Error(`the demo has no ${kind}: give it one, so that its doors are tried`);
  Object.assign(item, { events: [], ...change });
  return { file, item };
}

/** Every pure way in: null where it is open, else what it says. */
const ways: Readonly<Record<string, (file: TourFile, item: Item) => string | null | undefined>> = {
  gate: (file, item) =>
    judge(item, { from: prepFrom, to: show.to }, { jurisdictions: file.tour.jurisdictions, rules: file.examinationRules }).reason?.code,
  'plan, swap and failed box': (file, item) => whyNotUsable(file, show.id, item.id)?.code,
  'scan, tick and signature': (file, item) => barredItems(file, [item.id], { from: prepFrom, to: show.to })[0]?.reason.code,
};

/** One of every kind, on a tour through a place without rules of its own. */
function goingTo(place: string, placeAnswers: TourFile['tour']['placeAnswers']): BarredItem[] {
  const file = structuredClone(demoTour());
  Object.assign(file.tour, { jurisdictions: [place], placeAnswers });
  const ids = itemKinds.flatMap((kind) => one(file, kind)?.id ?? []);
  return [...barredItems(file, ids, { from: prepFrom, to: prepFrom })];
}

describe('the doors of the gate', () => {
  it('are shut by every state for every kind, whichever way', () => {
    const open: string[] = [];
    const lines: string[] = [];
    for (const kind of itemKinds)
      for (const [state, change] of Object.entries(states)) {
        const { file, item } = inState(kind, change);
        const said = Object.entries(ways).map(([way, walk]) => [way, walk(file, item) ?? 'OPEN'] as const);
        for (const [way, answer] of said) if (answer === 'OPEN') open.push(`${kind}, ${state}: ${way}`);
        lines.push(`${kind.padEnd(8)} ${state.padEnd(44)} ${said.map(([, answer]) => answer).join(' | ')}`);
      }
    const tried = itemKinds.length * Object.keys(states).length * Object.keys(ways).length;
    process.stderr.write(`${lines.join('\n')}\n${tried} tried, ${open.length} open\n`);
    expect(open).toEqual([]);
  });

  it('are shut at once to every kind where the answer for a place is taken back after the release', () => {
    const answer = { place: 'NO', rulesOf: 'GB', because: 'home rules', decidedBy: 'S. A.', decidedOn: seen };
    expect(goingTo('NO', [answer]).filter(({ reason }) => reason.code === 'not-judged')).toEqual([]);
    const shut = goingTo('NO', []);
    expect(shut.map(({ reason }) => reason)).toEqual(itemKinds.map(() => ({ code: 'not-judged', places: ['NO'] })));
    expect(goingTo('GB', [])).toEqual([]);
  });

  it('are shut in a place without rules: a stop that no reason of the system tech releases', async () => {
    const integerProgram = await loadIntegerProgramSolver();
    const file = structuredClone(demoTour());
    file.tour.jurisdictions = ['NO'];
    const plan = makePackPlan(file, show.id, { now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
    expect(plan.findings.filter((each) => each.code === 'not-judged')).toMatchObject([{ weight: 'stop' }]);
    expect(decideRelease(plan, [], undefined, 'pins fine', false)).toMatchObject({
      releases: false,
      refusal: { code: 'release-needs-officer' },
    });
  });
});
