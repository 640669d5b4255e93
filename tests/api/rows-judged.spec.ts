import { DataSource, type EntityManager } from 'typeorm';
import { type BadInput, seededRandom, writeCsv } from '#kernel';
import { type Item, type ItemKind, type Kit, type Tour, csvColumns } from '#tour-file';
import { english } from '#words';
import { faultsAround } from '../../apps/api/src/features/edition/waiting/faults-around.js';
import { KitReader } from '../../apps/api/src/features/register/kit.reader.js';
import { TourReader } from '../../apps/api/src/features/tour/tour.reader.js';
import { CsvService } from '../../apps/api/src/features/transfer/csv.service.js';
import { UnitOfWork } from '../../apps/api/src/platform/database/unit-of-work.js';
import type { Role, SignedIn } from '../../apps/api/src/platform/sign-in/person.js';
import { type TestApp, startTestApp, testDay } from '../support/test-app.js';

/** Everything on file, whatever the rows are. */
class WholeKit extends KitReader {
  override around(manager: EntityManager): Promise<Kit> {
    return this.load(manager);
  }
}

/** Every tour, whatever it names. */
class WholeTours extends TourReader {
  override faultsNaming(manager: EntityManager, kit: Kit) {
    return this.faultsWith(manager, kit);
  }
}

/** Rows are judged by as little of the register as they need; the answer is that of the whole register. */
describe('rows judged by what they name', () => {
  let test: TestApp;
  beforeAll(async () => {
    test = await startTestApp();
  });
  afterAll(() => test.close());

  it('get the same answer as by the whole register and all tours, with the same faults and names offered', async () => {
    const dataSource = test.app.get(DataSource);
    const clock = { now: () => new Date(`${testDay}T09:00:00Z`) };
    const unitOfWork = new UnitOfWork(dataSource, clock, english);
    const apart = new CsvService(unitOfWork, dataSource, new KitReader(), new TourReader(), clock, english);
    const whole = new CsvService(unitOfWork, dataSource, new WholeKit(), new WholeTours(), clock, english);
    const { items } = await new KitReader().load(dataSource.manager);
    await nameBoxes(dataSource, items);
    const people = await signedIn(dataSource);
    const random = seededRandom(20270226);
    const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
    const seen = { same: 0, faults: 0, inTours: 0, offered: 0, waits: 0 };
    for (let round = 0; round < 240; round++) {
      const kind = pick<ItemKind>(['box', 'box', 'box', 'cart', 'cart', 'hoist', 'grid', 'case', 'truck', 'shackle', 'pin', 'loom']);
      const ofKind = items.filter((item) => item.kind === kind);
      if (ofKind.length === 0) continue;
      const rows = [
        ...new Set(Array.from({ length: 1 + Math.floor(random() * 3) }, () => pick(kind === 'box' ? ofKind.slice(0, 12) : ofKind))),
      ];
      const bytes = Buffer.from(
        writtenWith(
          kind,
          rows.map((item) => spoilt(item, items, pick, random)),
        ),
      );
      const who = pick(people);
      const [a, b] = [await apart.import(kind, bytes, true, who, 'tried'), await whole.import(kind, bytes, true, who, 'tried')];
      expect(a).toEqual(b);
      seen[a.faults.length > 0 ? 'faults' : 'same']++;
      if (a.faults.some((fault) => fault.column.includes('tour.'))) seen.inTours++;
      if (a.faults.some((fault) => fault.wanted.includes('for example'))) seen.offered++;
      if (a.waits.length > 0) seen.waits++;
    }
    // Every way of an answer was met.
    expect(Object.entries(seen).filter(([, met]) => met <= 3)).toEqual([]);
  }, 60_000);

  it('as do changes that were accepted, with the carts on which the items stand', async () => {
    const { manager } = test.app.get(DataSource);
    const readers = { kit: new KitReader(), tours: new TourReader() };
    const { items, catalogue } = await readers.kit.load(manager);
    const standing = items.flatMap((item) => item.stack ?? []);
    const random = seededRandom(20270227);
    const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
    const seen = { none: 0, ofCarts: 0, ofModels: 0, inTours: 0 };
    const [carries] = catalogue.boxes;
    for (let round = 0; round < 24; round++) {
      const ids = [...new Set([pick(standing), ...(round % 2 ? [pick(items).id] : [])])];
      const [apart = [], whole] = await undone(manager, async (inside) => {
        // Carts that carry one model alone.
        await inside.query(`UPDATE model SET data = data || $1 WHERE kind = 'carts'`, [JSON.stringify({ carries: [carries!.model] })]);
        const before = new Set(told(await faultsAround(inside, readers, 'everything')));
        for (const id of ids) await inside.query('UPDATE item SET model = $2 WHERE id = $1', [id, modelFor(items, id, pick)]);
        const answers = [await faultsAround(inside, readers, new Set(ids)), await faultsAround(inside, readers, 'everything')];
        // What was wrong before is not of these items.
        return answers.map((faults) => told(faults).filter((each) => !before.has(each)));
      });
      expect(apart).toEqual(whole);
      seen[apart.length === 0 ? 'none' : 'ofModels']++;
      if (apart.some((fault) => fault.includes(': stack['))) seen.ofCarts++;
      if (apart.some((fault) => fault.includes('tour.'))) seen.inTours++;
    }
    expect(Object.entries(seen).filter(([, met]) => met < 2)).toEqual([]);
  }, 60_000);
});

const told = (faults: readonly BadInput[]): string[] => faults.map(({ field, wanted }) => `${field} ${wanted}`).sort();

/** What is done inside is taken back. */
async function undone<T>(manager: EntityManager, work: (inside: EntityManager) => Promise<T>): Promise<T> {
  const runner = manager.connection.createQueryRunner();
  await runner.startTransaction();
  try {
    return await work(runner.manager);
  } finally {
    await runner.rollbackTransaction();
    await runner.release();
  }
}

/** Its own model, another of its kind, or one that is not on file. */
function modelFor(items: readonly Item[], id: string, pick: <T>(list: readonly T[]) => T): string {
  const own = items.find((item) => item.id === id);
  const others = items.filter((item) => item.kind === own?.kind).map((item) => item.model);
  return pick([own?.model ?? '', own?.model ?? '', ...new Set(others), 'No such model']);
}

/** The tour asks for the boxes of its first hang by their serials. */
async function nameBoxes(dataSource: DataSource, items: readonly Item[]): Promise<void> {
  const [tour]: { id: string; data: Tour }[] = await dataSource.query('SELECT id, data FROM tour LIMIT 1');
  const [show, ...shows] = tour!.data.shows;
  const [hang, ...hangs] = show!.hangs;
  const free = [...items];
  const boxes = hang!.boxes.map((box) => {
    const at = free.findIndex((item) => item.kind === 'box' && item.model === box.model);
    return at < 0 ? box : { ...box, serial: free.splice(at, 1)[0]!.id };
  });
  const data = { ...tour!.data, shows: [{ ...show, hangs: [{ ...hang, boxes }, ...hangs] }, ...shows] };
  await dataSource.query('UPDATE tour SET data = $2 WHERE id = $1', [tour!.id, JSON.stringify(data)]);
}

async function signedIn(dataSource: DataSource): Promise<SignedIn[]> {
  const rows: { id: string; name: string; role: Role }[] = await dataSource.query(
    `SELECT id, name, role FROM account WHERE role IN ('warehouse', 'safety', 'system') ORDER BY role`,
  );
  return rows as unknown as SignedIn[];
}

function writtenWith(kind: ItemKind, items: readonly Item[]): string {
  const columns = csvColumns(kind);
  return writeCsv([columns.map((each) => each.heading), ...items.map((item) => columns.map((each) => each.cell(item)))]);
}

/** The item with one thing about it otherwise, right or wrong. */
function spoilt(item: Item, items: readonly Item[], pick: <T>(list: readonly T[]) => T, random: () => number): Item {
  const boxes = items.filter((each) => each.kind === 'box').map((each) => each.id);
  const models = [...new Set(items.filter((each) => each.kind === item.kind).map((each) => each.model))];
  const holders = items.filter((each) => each.kind === 'case' || each.kind === 'truck').map((each) => each.id);
  const missing = () => pick(['P-9999', 'zz-1', 'CA-none', 'TRUCK-77', 'q']);
  const changes: (() => Item)[] = [
    () => ({ ...item, depot: `Depot ${Math.floor(random() * 9)}` }),
    () => ({ ...item, model: pick(models) }),
    () => ({ ...item, model: 'No such model' }),
    () => ({ ...item, in: pick(holders) }),
    () => ({ ...item, in: pick([missing(), pick(boxes)]) }),
    () => ({ ...item, state: 'quarantined', reason: 'dropped' }),
    () => ({ ...item, id: `${item.id}-new` }),
    () => ({ ...item, id: pick(items).id }),
  ];
  if (item.kind === 'cart') {
    changes.push(
      () => ({ ...item, stack: [pick(boxes), pick(boxes)] }),
      () => ({ ...item, stack: [...(item.stack ?? []).slice(0, 1), missing()] }),
      () => ({ ...item, stack: Array.from({ length: 9 }, () => pick(boxes)) }),
      () => ({ ...item, stack: [pick(items).id] }),
    );
  }
  return pick(changes)();
}
