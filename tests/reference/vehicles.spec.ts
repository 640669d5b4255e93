import { axleLimits, axleLoads, bridgeFormulaLb, outsideLimitsKg, type Truck } from '#truck-pack';

/** mass in kg at metres from the front wall. */
type Load = readonly (readonly [massKg: number, atM: number])[];
const on = (truck: Pick<Truck, 'semiTrailer' | 'rigid'>, load: Load) =>
  axleLoads(
    truck,
    load.reduce((sum, [mass]) => sum + mass, 0),
    load.reduce((sum, [mass, at]) => sum + mass * at * 1000, 0),
  )!;

/** Group of N axles over L ft -> pounds: 23 U.S.C. 127(a)(2) (23 CFR 658.17); exact ties go down, as the official table prints them (ties from memory). */
const groups: Record<number, Record<number, number>> = {
  3: { 9: 42_500, 10: 43_500, 11: 44_000, 12: 45_000, 13: 45_500, 16: 48_000, 20: 51_000, 24: 54_000, 28: 57_000, 32: 60_000 },
  4: {
    12: 50_000,
    14: 51_500,
    16: 52_500,
    20: 55_500,
    22: 56_500,
    24: 58_000,
    28: 60_500,
    32: 63_500,
    35: 65_500,
    36: 66_000,
    38: 67_500,
    40: 68_500,
    48: 74_000,
    57: 80_000,
  },
  5: {
    16: 58_000,
    18: 59_000,
    20: 60_500,
    24: 63_000,
    28: 65_500,
    32: 68_000,
    36: 70_500,
    40: 73_000,
    44: 75_500,
    48: 78_000,
    50: 79_000,
    51: 80_000,
  },
  6: { 20: 66_000, 24: 68_500, 28: 71_000, 32: 73_000, 36: 75_500, 40: 78_000, 43: 80_000 },
  7: { 24: 74_000, 28: 76_500, 32: 78_500, 34: 80_000 },
};

describe('the bridge formula', () => {
  it.each(
    Object.entries(groups).flatMap(([axles, row]) =>
      Object.entries(row).map(([span, pounds]) => [Number(axles), Number(span), pounds] as const),
    ),
  )('%i axles over %i ft may carry %i lb', (axles, span, pounds) => expect(bridgeFormulaLb(span, axles)).toBe(pounds));

  it('five axles over 51 ft may carry 80,000 lb, but axles 2 to 5 over 35 ft only 65,500 (FHWA brochure example, from memory)', () => {
    expect(bridgeFormulaLb(51, 5)).toBe(80_000);
    expect(bridgeFormulaLb(35, 4)).toBeLessThan(68_000);
  });
});

describe('axle loads', () => {
  // Worked example of a 40 t articulated vehicle (lever arms as in Krebs and Ehmke 2021); drive limit 11.5 t: Directive 96/53/EC Annex I.
  const articulated = {
    semiTrailer: {
      kingpinXMm: 1600,
      axleGroupXMm: 9300,
      tareKingpinKg: 2100,
      tareAxleGroupKg: 4900,
      maxAxleGroupKg: 24_000,
      tractor: {
        wheelbaseMm: 3700,
        kingpinAheadOfDriveMm: 600,
        tareSteerKg: 5400,
        tareDriveKg: 2100,
        maxSteerKg: 8000,
        maxDriveKg: 11_500,
        minDriveShareOfGross: 0.25,
      },
    },
    maxGrossKg: 40_000,
  } as unknown as Truck;

  it('of the articulated vehicle are those of the worked example, its drive axle too heavy', () => {
    const loads = on(articulated, [
      [9000, 2],
      [8000, 6],
      [7500, 10.5],
    ]);
    expect(loads.kingpinKg).toBeCloseTo(12_892.2, 1);
    expect(loads.axleGroupKg).toBeCloseTo(18_607.8, 1);
    expect(loads.steerKg).toBeCloseTo(7490.6, 1);
    expect(loads.driveKg).toBeCloseTo(12_901.6, 1);
    expect(loads.grossKg).toBeCloseTo(39_000, 6);
    expect(outsideLimitsKg(articulated, 24_500, 9000 * 2000 + 8000 * 6000 + 7500 * 10_500)).toBeCloseTo(12_901.6 - 11_500, 1);
  });

  it('are legal once the first two stand further back', () => {
    const loads = on(articulated, [
      [9000, 3],
      [8000, 6.6],
      [7500, 10.5],
    ]);
    expect([loads.kingpinKg, loads.axleGroupKg, loads.steerKg, loads.driveKg].map((each) => Math.round(each!))).toEqual([
      11_100, 20_400, 7200, 11_400,
    ]);
    expect(outsideLimitsKg(articulated, 24_500, 9000 * 3000 + 8000 * 6600 + 7500 * 10_500)).toBe(0);
  });

  // Load distribution diagram of the same vehicle: most payload by where its centre of gravity lies, and what limits it there.
  it.each([
    [2, 9619],
    [3, 11_146],
    [4, 13_249],
    [5, 16_330],
    [6, 21_278],
    [6.5, 25_078],
    [7, 25_500],
    [7.5, 4330],
    [8, 2160],
  ])('with its centre of gravity at %s m it carries %i kg and no more', (at, mass) => {
    const outside = (kg: number) => outsideLimitsKg(articulated, kg, kg * at * 1000);
    expect(outside(mass - 1)).toBe(0);
    expect(outside(mass + 2)).toBeGreaterThan(0);
  });

  it('of the semi-trailer of published loading instances: empty, and with 20 t (Krebs and Ehmke 2021)', () => {
    const trailer = {
      semiTrailer: {
        kingpinXMm: 1600,
        axleGroupXMm: 9200,
        tareKingpinKg: 6750 * (16 / 76),
        tareAxleGroupKg: 6750 * (60 / 76),
        tractor: { wheelbaseMm: 3600, kingpinAheadOfDriveMm: 600, tareSteerKg: 7300 * (25 / 36), tareDriveKg: 7300 * (11 / 36) },
      },
    } as unknown as Truck;
    const of = (load: Load) => {
      const { kingpinKg, steerKg, driveKg, axleGroupKg } = on(trailer, load);
      return [kingpinKg, steerKg, driveKg, axleGroupKg];
    };
    for (const [index, wanted] of [1421.1, 5306.3, 3414.8, 5328.9].entries()) expect(of([])[index]).toBeCloseTo(wanted, 1);
    for (const [index, wanted] of [7736.8, 6358.9, 8677.9, 19_013.2].entries()) expect(of([[20_000, 6.8]])[index]).toBeCloseTo(wanted, 1);
  });

  it('of a rigid truck: front 6,755.2 and rear 8,944.8 kg (worked example)', () => {
    const rigid = { rigid: { frontAxleXMm: -900, rearAxleXMm: 4900, tareFrontKg: 5000, tareRearKg: 3400 } } as unknown as Truck;
    const loads = on(rigid, [
      [3000, 1.5],
      [2500, 3.9],
      [1800, 6.3],
    ]);
    expect(loads.frontKg).toBeCloseTo(6755.2, 1);
    expect(loads.rearKg).toBeCloseTo(8944.8, 1);
  });

  it('keep a quarter of the gross mass on the driving axle where the rule asks for it (Directive 96/53/EC Annex I 4.1, from memory)', () => {
    expect(axleLimits(articulated, 40_000)).toContainEqual({ axle: 'driveKg', most: 11_500, least: 10_000 });
  });
});
