import { wholeValue } from '../../../tests/support/whole-value.js';
import { type Item, item, itemKinds } from '../shapes/index.js';
import { csvColumns } from './csv-columns.js';
import { readItemsCsv, withUnseen } from './read-items-csv.js';

const turns = Array.from({ length: 12 }, (_, turn) => turn);
// Examinations have their own form, and their own rules between days.
const { examinations: _own, ...shape } = item.shape;

const savedFromForm = (whole: Item): Item | undefined => {
  const columns = csvColumns(whole.kind);
  const { items, faults } = readItemsCsv(whole.kind, [columns.map((each) => each.heading), columns.map((each) => each.cell(whole))]);
  expect(faults).toEqual([]);
  return items[0] && withUnseen(items[0], whole);
};

// The items are made from the schema: a field that is new there fails here until a column holds it or it is kept.
describe.each(itemKinds)('a %s that is saved unchanged from its form', (kind) => {
  it.each(turns)('loses nothing of an item with every field (%i)', (turn) => {
    const fields = Object.entries(shape).map(([field, schema], at) => [field, wholeValue(schema, turn + at, field)]);
    const whole = item.parse({ ...Object.fromEntries(fields), kind, examinations: [{ on: '2026-03-04', outcome: 'pass' }] });
    expect(Object.keys(whole).sort()).toEqual(Object.keys(item.shape).sort());
    expect(savedFromForm(whole)).toEqual(whole);
  });
});

it('keeps serials with blanks apart in the boxes of a cart', () => {
  for (const stack of [['B 1', 'B 2', 'B3'], ['B 1'], ['B1', 'B2'], []]) {
    const cart = item.parse({ id: 'K 1', kind: 'cart', model: 'Cart of four', depot: 'Ferry Lane', stack });
    expect(savedFromForm(cart)?.stack).toEqual(stack);
  }
});

it.each(['1e308', '1e30', '1000001'])('of %s uses is refused once, with the most that there can be', (uses) => {
  const { faults } = readItemsCsv('box', [
    ['serial', 'model', 'depot', 'uses'],
    ['P-1', 'Plover', 'Ferry Lane', uses],
  ]);
  expect(faults).toEqual([expect.objectContaining({ row: 2, column: 'uses', wanted: 'at most 1000000' })]);
});
