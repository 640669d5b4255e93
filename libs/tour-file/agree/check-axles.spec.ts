import { readFileSync } from 'node:fs';
import { modelCell, modelColumns, modelExamples, readTourFile } from '#tour-file';

const written = JSON.parse(readFileSync('tests/examples/demo-tour.json', 'utf8')) as object;

/** Faults of the demo tour when its first truck, a semi-trailer with the trailer axles at 9300 and the drive axle at 2200, has these axles. */
function faultsWith(axles: unknown): readonly unknown[] {
  const copy: any = structuredClone(written);
  copy.catalogue.trucks[0].axles = axles;
  const read = readTourFile(copy);
  return read.ok ? [] : read.error;
}
const good = [
  { group: 'steer', xMm: -1500 },
  { group: 'drive', xMm: 2200 },
  { group: 'trailer', xMm: 8000 },
  { group: 'trailer', xMm: 9300 },
  { group: 'trailer', xMm: 10600 },
];

describe('the places of single axles', () => {
  it('agree with the levers of the truck', () => expect(faultsWith(good)).toEqual([]));

  it.each([
    [
      'a trailer whose axles are not where its lever is',
      good.map((each) => (each.group === 'trailer' ? { ...each, xMm: each.xMm + 300 } : each)),
      'axles',
      '9300',
    ],
    ['a group that the truck does not have', [...good, { group: 'rear', xMm: 12000 }], 'axles[5].group', 'steer'],
    ['an axle ahead of the one before it', [good[0], good[1], good[3], good[2], good[4]], 'axles[3].xMm', 'behind the axle before it'],
    ['no drive axle', good.filter((each) => each.group !== 'drive'), 'axles', 'drive'],
    ['a place that is no number', [{ group: 'steer', xMm: 'front' }, good[1]], 'axles[0].xMm', 'number'],
  ])('refuses %s, by field, value and what would be right', (_what, axles, field, wanted) => {
    const [fault] = faultsWith(axles) as { field: string; wanted: string }[];
    expect(fault!.field).toBe(`catalogue.trucks[0].${field}`);
    expect(fault!.wanted).toContain(wanted);
  });

  it('are one cell of the truck’s row, written and read back', () => {
    const column = modelColumns('trucks').find((each) => each.heading === 'axles')!;
    expect(modelCell(modelExamples.trucks, column)).toBe('front -900; rear 4900');
    expect(column.form.read('front -900; rear 4900')).toEqual(modelExamples.trucks.axles);
    expect(column.form.read('front -900; rear')).toBeUndefined();
  });
});
