import type { Truck } from '#truck-pack';
import type { AxleName } from '#trade';
import { english } from '#words';
import type { AxleStop, Placement } from '../contract/index.js';
import { axleStops, axlesOf } from './axle-sheet.js';
import { bridgeCheck } from './bridge-check.js';

const piece = (id: string, middleMm: number, massKg: number, firstOff: number): Placement => ({
  id,
  label: id,
  fact: { isCase: true, inside: [] },
  group: `group ${firstOff}`,
  xMm: middleMm - 500,
  yMm: 740,
  zMm: 0,
  turned: false,
  alongMm: 1000,
  acrossMm: 1000,
  heightMm: 1000,
  massKg,
  firstOff,
  tag: null,
});

/** The articulated vehicle of the worked example of 40 t (lever arms as in Krebs and Ehmke 2021): k 1.6 m, a 9.3 m, d 0.6 m, w 3.7 m. */
const truck: Truck = {
  id: 'T1',
  innerLengthMm: 13600,
  innerWidthMm: 2480,
  innerHeightMm: 2700,
  blocked: [],
  maxGrossKg: 40000,
  semiTrailer: {
    kingpinXMm: 1600,
    axleGroupXMm: 9300,
    tareKingpinKg: 2100,
    tareAxleGroupKg: 4900,
    maxAxleGroupKg: 24000,
    tractor: {
      wheelbaseMm: 3700,
      kingpinAheadOfDriveMm: 600,
      tareSteerKg: 5400,
      tareDriveKg: 2100,
      maxSteerKg: 8000,
      maxDriveKg: 11500,
      minDriveShareOfGross: 0.25,
    },
  },
};
const load = [piece('A', 2000, 9000, 3), piece('B', 6000, 8000, 2), piece('C', 10500, 7500, 1)];

describe('the axle sheet', () => {
  const stops = axleStops(truck, load, english);
  const of = (stop: AxleStop, axle: string) => stop.loads.find((each) => each.axle === axle)!;

  it('has the whole load as the worked example has it, the drive axle over its limit of 11.5 t (Directive 96/53/EC Annex I)', () => {
    expect(of(stops[0]!, 'kingpin').loadKg).toBeCloseTo(12892.2, 1);
    expect(of(stops[0]!, 'trailer axles').loadKg).toBeCloseTo(18607.8, 1);
    expect(of(stops[0]!, 'steer axle').loadKg).toBeCloseTo(7490.6, 1);
    expect(of(stops[0]!, 'drive axle')).toMatchObject({ verdict: 'over', limitKg: 11500 });
    expect(of(stops[0]!, 'drive axle').loadKg).toBeCloseTo(12901.6, 1);
    expect(of(stops[0]!, 'gross mass').loadKg).toBeCloseTo(39000, 6);
  });

  it('has a line after each stop but the last, by hand: the last two pieces, then the first alone', () => {
    expect(stops.map((each) => each.off)).toEqual([null, 'group 1', 'group 2']);
    // A alone: trailer axles 4900 + 9000 (2.0 - 1.6) / 7.7, kingpin 2100 + 9000 (9.3 - 2.0) / 7.7.
    expect(of(stops[2]!, 'trailer axles').loadKg).toBeCloseTo(4900 + (9000 * 0.4) / 7.7, 6);
    expect(of(stops[2]!, 'kingpin').loadKg).toBeCloseTo(2100 + (9000 * 7.3) / 7.7, 6);
    expect(stops.map((each) => each.massKg)).toEqual([24500, 17000, 9000]);
  });

  it('says when an axle carries too little of the whole', () => {
    const tail = axleStops(truck, [piece('C', 12500, 12000, 1)], english);
    expect(of(tail[0]!, 'drive axle').verdict).toBe('too light');
  });

  it('opens each axle into its terms', () => {
    const drive = axlesOf(truck, load, stops).find((each) => each.axle === 'drive axle')!;
    const term = (what: string) => drive.working!.terms.find((each) => each.what === what)!.value;
    expect(
      term('tare') + (term('kingpin') * (term('wheelbase') - term('kingpin ahead of the drive axle'))) / term('wheelbase'),
    ).toBeCloseTo(drive.loadKg, 6);
  });
});

describe('the bridge formula over the axles of a truck', () => {
  const lb = 0.45359237;
  const ft = 304.8;
  const stop = (loads: Partial<Record<AxleName, number>>): AxleStop => ({
    off: null,
    massKg: 0,
    sideOffsetMm: 0,
    sideLimitMm: null,
    loads: Object.entries(loads).map(([axle, pounds]) => ({
      axle,
      loadKg: pounds * lb,
      limitKg: null,
      leastKg: null,
      verdict: 'within',
      fact: axle as AxleName,
    })),
  });
  const axles = (...places: [group: 'steer' | 'drive' | 'trailer', feet: number][]) =>
    places.map(([group, feet]) => ({ group, xMm: feet * ft }));
  const five = axles(['steer', 0], ['drive', 12], ['drive', 16], ['trailer', 47], ['trailer', 51]);

  // 23 U.S.C. 127(a)(2): five axles over 51 ft may carry 80,000 lb; two tandems 36 ft or more apart 34,000 lb each. 39 ft from axle 2 to axle 5.
  it('lets five axles over 51 ft carry 80,000 lb, with tandems of 34,000 lb 39 ft apart', () => {
    const checked = bridgeCheck({ axles: five }, stop({ steer: 12000, drive: 34000, trailer: 34000 }), english);
    expect(checked).toMatchObject({ status: 'within' });
    expect(checked.groups).toHaveLength(15);
    expect(checked.groups.find((each) => each.first === 1 && each.last === 5)).toMatchObject({ spanFt: 51, limitLb: 80000 });
    expect(checked.groups.find((each) => each.first === 2 && each.last === 5)).toMatchObject({ spanFt: 39, limitLb: 68000 });
  });

  // The same law: four axles over 35 ft may carry 65,500 lb, tandems or not.
  it('refuses 68,000 lb on four axles over 35 ft', () => {
    const short = axles(['steer', 0], ['drive', 16], ['drive', 20], ['trailer', 47], ['trailer', 51]);
    const checked = bridgeCheck({ axles: short }, stop({ steer: 12000, drive: 34000, trailer: 34000 }), english);
    expect(checked.status).toBe('over');
    expect(checked.groups.filter((each) => each.isOver)).toMatchObject([{ first: 2, last: 5, spanFt: 35, limitLb: 65500 }]);
    expect(checked.sentence).toBe('Bridge formula: axles 2 to 5 over 35 ft 68,000 of 65,500 lb.');
  });

  it('holds a tandem to 34,000 lb and one axle to 20,000 lb', () => {
    const checked = bridgeCheck({ axles: five }, stop({ steer: 20500, drive: 34500, trailer: 20000 }), english);
    expect(checked.groups.filter((each) => each.isOver).map(({ first, last }) => [first, last])).toEqual([
      [1, 1],
      [1, 3],
      [2, 3],
    ]);
  });

  it('says so where the places of the axles, or a load, are not on file', () => {
    expect(bridgeCheck({}, stop({ steer: 1 }), english)).toMatchObject({
      status: 'not on file',
      sentence: expect.stringContaining('not on file'),
    });
    expect(bridgeCheck({ axles: five }, stop({ trailer: 1 }), english)).toMatchObject({ status: 'not on file' });
  });
});
