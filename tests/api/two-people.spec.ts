import { seededRandom } from '#kernel';
import type { Hang, Tour } from '#tour-file';
import { Clashed, saveOver } from '../../apps/web/src/features/tour/edit/save-over.js';
import { toursOver } from '../support/lossy-wire.js';
import { type TestApp, startTestApp } from '../support/test-app.js';

const rounds = Number(process.env.CARTWRIGHT_ROUNDS ?? 2);
const id = 'harbour-lights';

type Change = { readonly hang: number; readonly field: 'trimHeightMm' | 'goesUp'; readonly value: number };

const hangsOf = (tour: Tour): readonly Hang[] => tour.shows[0]?.hangs ?? [];
const withChange = (tour: Tour, { hang, field, value }: Change): Tour => ({
  ...tour,
  shows: tour.shows.map((show, at) =>
    at === 0 ? { ...show, hangs: show.hangs.map((each, index) => (index === hang ? { ...each, [field]: value } : each)) } : show,
  ),
});
const valueOf = (tour: Tour, { hang, field }: Change): unknown => hangsOf(tour)[hang]?.[field];

describe('two people in one show at the same time', () => {
  let test: TestApp;
  beforeAll(async () => {
    test = await startTestApp();
  });
  afterAll(() => test.close());

  it(`nothing is lost, and who both wrote one field both see both values (${rounds} rounds)`, async () => {
    const random = seededRandom(11);
    const whole = (most: number): number => Math.floor(random() * most);
    const [one, other] = [
      toursOver(await test.as('system'), { latencyMs: 0, lost: 0, seed: 1 }),
      toursOver(await test.as('system'), { latencyMs: 0, lost: 0, seed: 2 }),
    ];
    const told = { clashes: 0, both: 0 };
    for (let round = 1; round <= rounds; round++) {
      const read = await one.read(id);
      const count = hangsOf(read.tour).length;
      const field = (): Change['field'] => (random() < 0.5 ? 'trimHeightMm' : 'goesUp');
      // Values that no round had before, so that each save is a change.
      const valueFor = (of: Change['field'], side: number): number =>
        of === 'goesUp' ? 1 + ((2 * round + side) % 50) : 6000 + 10 * round + side;
      const first = { hang: whole(count), field: field() };
      const isSame = round % 2 === 0;
      const second = isSame ? first : { hang: (first.hang + 1 + whole(count - 1)) % count, field: field() };
      const mine: Change = { ...first, value: valueFor(first.field, 0) };
      const theirs: Change = { ...second, value: valueFor(second.field, 1) };
      const outcomes = await Promise.allSettled([
        saveOver(one, read, withChange(read.tour, mine)),
        saveOver(other, read, withChange(read.tour, theirs)),
      ]);
      if (!isSame) {
        expect(outcomes.map((each) => each.status)).toEqual(['fulfilled', 'fulfilled']);
        const { tour } = await one.read(id);
        expect([valueOf(tour, mine), valueOf(tour, theirs)]).toEqual([mine.value, theirs.value]);
        told.both++;
        continue;
      }
      // One was first; the other is told both values, and insists.
      const refused = outcomes.findIndex((each) => each.status === 'rejected');
      const clash = outcomes[refused]?.status === 'rejected' ? (outcomes[refused].reason as Clashed) : undefined;
      const won = outcomes[1 - refused];
      if (!(clash instanceof Clashed) || won?.status !== 'fulfilled') throw new Error(`round ${round}: ${JSON.stringify(outcomes)}`);
      const [insists, was] = refused === 0 ? [mine, theirs] : [theirs, mine];
      const path = `shows[0].hangs[${mine.hang}].${mine.field}`;
      expect(clash.clashes).toEqual([{ path, yours: insists.value, onFile: was.value }]);
      expect(clash.faults[0]?.wanted).toContain(`${was.value} was saved meanwhile`);
      await saveOver(other, clash.now, withChange(clash.now.tour, insists));
      // Who was first goes on from what was saved then, and is told as well.
      const again = { ...was, value: was.value + 5 };
      const seen = await saveOver(one, won.value, withChange(won.value.tour, again)).then(
        () => undefined,
        (fault: Clashed) => fault.clashes,
      );
      expect(seen).toEqual([{ path, yours: again.value, onFile: insists.value }]);
      expect(valueOf((await one.read(id)).tour, mine)).toBe(insists.value);
      told.clashes++;
    }
    expect(told).toEqual({ clashes: Math.floor(rounds / 2), both: Math.ceil(rounds / 2) });
  });
});
