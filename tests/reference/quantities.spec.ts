import { readFileSync } from 'node:fs';
import { answer as hangStatics } from '../../apps/cli/engine/hang-statics.js';
import { engine as cartAllocation } from '../../apps/cli/engine/cart-allocation.js';
import { answer as spares } from '../../apps/cli/engine/spares.js';
import { answer as truckPack } from '../../apps/cli/engine/truck-pack.js';
import { type BadInput, type Result, ok, quantities } from '#kernel';
import { planLoads } from '#pack-plan';
import { readTourFile } from '#tour-file';
import { numericFields, withNumber } from '../support/numeric-fields.js';
import { writtenDemoTour } from '../support/demo-tour.js';

const json = (path: string): any => JSON.parse(readFileSync(path, 'utf8'));
const schemaOf = (name: string) => json(`libs/contracts/schemas/${name}.schema.json`);
const caseOf = (path: string, change: (file: any) => void = () => undefined) => {
  const file = json(`tests/cases/${path}.json`);
  change(file);
  return file;
};

type Answer = (input: unknown, path?: string) => Result<unknown, readonly BadInput[]>;

/** Files that hold every number of their schema between them, and who answers them. */
interface Format {
  readonly schema: string;
  readonly files: readonly unknown[];
  readonly answer: Answer;
}

const rigid = {
  frontAxleXMm: -900,
  rearAxleXMm: 4900,
  tareFrontKg: 4900,
  tareRearKg: 3900,
  maxFrontKg: 9000,
  maxRearKg: 11500,
  minFrontShareOfGross: 0.2,
};

/** Of items that say the same things of themselves one, and whom it or the tour names: the file is read for every number that stands in it. */
function dropTwins(file: any): void {
  const { freight, ...tour } = file.tour;
  const said = new Set<string>();
  const first = file.items.filter((each: any) => said.size < said.add(`${each.kind}: ${Object.keys(each).sort().join(' ')}`).size);
  const named = JSON.stringify([tour, file.bookings, first]);
  file.items = file.items.filter((each: any) => first.includes(each) || named.includes(`"${each.id}"`));
  file.tour.freight = freight.filter((each: any) => file.items.some(({ id }: any) => id === each.case));
}

/** The demo tour with everything that a tour file may hold and the demo does not use. */
const wholeTour = writtenDemoTour((file) => {
  const [semi] = file.catalogue.trucks;
  semi.blocked = [{ xMm: 0, yMm: 0, zMm: 0, lengthMm: 300, widthMm: 2480, heightMm: 400 }];
  semi.axles = [
    { group: 'steer', xMm: -1500 },
    { group: 'drive', xMm: 2200 },
    { group: 'trailer', xMm: 9300 },
  ];
  file.systems[0].adapters = [
    {
      id: 'AF-1',
      joins: ['Plover', 'Dunlin'],
      massKg: 20,
      frontHeightMm: 100,
      rearHeightMm: 100,
      depthMm: 500,
      cgBehindMm: 250,
      cgBelowMm: 50,
      rearLeverMm: 505,
    },
  ];
  const standing = { source: 'made up for this test', status: 'house rule' };
  file.loadRules[0].hoisting = { ...standing, least: 1.05, perSpeedSPerM: 0.17, speedMps: 0.1 };
  file.loadRules[0].onePickSlack = { ...standing, usableShare: 0.9 };
  file.tour.wishes = { dueSoon: 1, wear: 1 };
  file.tour.shows.length = 1;
  dropTwins(file);
  file.items.find((each: any) => each.state === 'in repair').lent = {
    by: 'lender',
    delivered: { on: '2027-02-20', condition: 'whole', by: 'made up for this test' },
    massKg: 40,
  };
  const [show] = file.tour.shows;
  show.loading = { kept: [{ piece: 'CT-01', truck: 'T1', xMm: 0, yMm: 0, zMm: 0, turned: false }] };
  const [left, , centre] = show.hangs;
  left.tiltNeeds = { fromDeg: -1, toDeg: 4 };
  const structure = { value: 20, unit: 'kN' };
  left.picks[0].bridle = {
    legs: [
      { xMm: -1200, yMm: 0, aboveMm: 2500, structure },
      { xMm: 1200, yMm: 0, aboveMm: 2500, structure },
    ],
    shackles: left.picks[0].shackles,
    slings: left.picks[0].slings,
  };
  const { shackles, slings } = left.picks[0];
  centre.pullBack = {
    position: 8,
    behindMm: 400,
    belowMm: 300,
    anchorForwardMm: -6000,
    anchorBelowMm: 9000,
    chainMm: 5000,
    tensionN: 900,
    structure,
    shackles,
    slings,
  };
  // Hangs that no show has, so that what is odd in them is found in the design.
  file.tour.designs = [{ id: 'arena', name: 'Arena', hangs: structuredClone(file.tour.shows[0].hangs) }];
});

/** What the loads of a hang are made from. */
const isOfLoads = /boxes|grids|hoists|shackles|slings|systems|loadRules|hangs/;

let allocation: Answer;
beforeAll(async () => {
  const engine = await cartAllocation();
  allocation = (input) => engine(input, { work: 20_000, seconds: 60 });
});

const formats: readonly Format[] = [
  {
    schema: 'hang-statics-case',
    files: [caseOf('hang-statics/four-boxes', (file) => Object.assign(file.boxes[0], { ratedRearLinkN: 4e4, ratedFrontPinN: 2e4 }))],
    answer: (input) => hangStatics(input, { work: undefined, seconds: 1 }),
  },
  { schema: 'cart-allocation-case', files: [caseOf('cart-allocation/one-box-out-of-service')], answer: (input) => allocation(input) },
  {
    schema: 'truck-pack-case',
    files: [
      caseOf('truck-pack/one-semi-trailer'),
      caseOf('truck-pack/one-semi-trailer', (file) => {
        const { semiTrailer: _semiTrailer, ...truck } = file.trucks[0];
        file.trucks[0] = { ...truck, rigid };
      }),
    ],
    answer: (input) => truckPack(input, { work: 2_000, seconds: 60 }),
  },
  { schema: 'spares-case', files: [caseOf('spares/front-and-lock-pins')], answer: spares },
  { schema: 'examinations-case', files: [], answer: (input) => ok(input) },
  {
    schema: 'tour-file',
    files: [wholeTour],
    answer: (input, path) => {
      const read = readTourFile(input);
      return read.ok && isOfLoads.test(path ?? 'hangs') ? ok(planLoads(read.value, 'quayside')) : read;
    },
  },
];

const odd: readonly (readonly [string, unknown])[] = [
  ['1e-300', 1e-300],
  ['-1', -1],
  ['1e300', 1e300],
  ['0', 0],
  ['NaN as text', 'NaN'],
];

/** Numbers of an answer that are none, or that no load, length or count can be. */
function absurdIn(answer: unknown, path = ''): string[] {
  if (typeof answer === 'number') return Number.isFinite(answer) && Math.abs(answer) < 1e15 ? [] : [`${path} = ${answer}`];
  if (typeof answer !== 'object' || answer === null) return [];
  return Object.entries(answer).flatMap(([key, each]) => absurdIn(each, `${path}.${key}`));
}

describe('what a number may be', () => {
  it('each kind has bounds that part what can be from what cannot, and a reason', () => {
    for (const { least, most, why } of Object.values(quantities)) {
      expect(least).toBeLessThan(most);
      expect(Number.isFinite(least) && Number.isFinite(most) && most <= 1e9).toBe(true);
      expect(why.length).toBeGreaterThan(8);
    }
    for (const kind of Object.keys(quantities) as (keyof typeof quantities)[])
      if (/length|body|lever|wheelbase|height|chainM$|mass(Kg)$|force|tension|rated|gravity/i.test(kind) && !/None|vehicleMass/.test(kind))
        expect({ kind, least: quantities[kind].least > 0 }).toEqual({ kind, least: true });
  });

  it.each(formats.map((each) => [each.schema, each] as const))(
    'every number of a %s is bound, and odd ones are refused by name or answered',
    (schema, { files, answer }) => {
      const fields = numericFields(schemaOf(schema));
      for (const { path, schema: each } of fields) {
        const least = each.minimum ?? each.exclusiveMinimum;
        const most = each.maximum ?? each.exclusiveMaximum;
        expect({ path, isBound: Math.abs(least ?? Infinity) <= 1e9 && Math.abs(most ?? Infinity) <= 1e9 }).toEqual({ path, isBound: true });
      }
      for (const file of files) {
        const said = answer(file);
        expect(said.ok ? [] : said.error).toEqual([]);
      }
      const wrong: string[] = [];
      const tried = { refused: 0, answered: 0 };
      for (const {
        path,
        schema: { minimum = -1e9 },
      } of fields)
        for (const [name, value] of odd) {
          const [changed] = files.flatMap((file) => withNumber(file, path, value) ?? []);
          if (!changed) {
            wrong.push(`${path} stands in no file of this test`);
            continue;
          }
          const said = answer(changed.file, path);
          const must = typeof value !== 'number' || value < minimum || value === 1e300;
          if (said.ok) {
            tried.answered++;
            if (must) wrong.push(`${changed.field} = ${name} is taken`);
            wrong.push(
              ...absurdIn(said.value)
                .slice(0, 1)
                .map((each) => `${changed.field} = ${name} gives ${each}`),
            );
          } else {
            tried.refused++;
            if (!said.error.some(({ field, wanted }) => wanted !== '' && isAbout(field, changed.field)))
              wrong.push(`${changed.field} = ${name}: ${JSON.stringify(said.error[0])}`);
          }
        }
      process.stderr.write(
        `${schema}: ${fields.length} numbers, ${tried.refused} refused, ${tried.answered} answered, ${wrong.length} wrong\n`,
      );
      expect(wrong).toEqual([]);
    },
  );
});

/** Where a number has to agree with others, one of those is named: what stands beside what it stands in, or the splay that a model lists. */
function isAbout(named: string, changed: string): boolean {
  const around = named.replace(/(\.[^.[]+|\[\d+\])$/, '');
  return (
    changed.startsWith(named) ||
    (around !== named && changed.startsWith(around)) ||
    (/splaysDeg/.test(changed) && named.endsWith('.splayDeg'))
  );
}
