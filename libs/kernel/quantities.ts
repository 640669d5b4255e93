import { z } from 'zod';

/** The least and the most that a number may be, both allowed, and why: what lies outside is a slip of the keyboard or a wrong unit. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
  readonly why: string;
}

/**
 * Kinds of quantities in case files, tour files and forms. Bounds are wide: they part what can be from what cannot, never usual from unusual. Where no
 * source is named, the reason is geometry or common practice without a published source.
 */
export const quantities = {
  massKg: { least: 0.001, most: 100_000, why: 'From a gram to 100 t; a whole vehicle has 40 t (Directive 96/53/EC, Annex I, 2.2).' },
  caseMassKg: { least: 1e-9, most: 100_000, why: 'Of a case file: textbooks hang loads on rods that weigh nothing, which are written so.' },
  massOrNoneKg: { least: 0, most: 100_000, why: 'A mass that may be nothing: an extra, a base, what a case holds.' },
  steelKg: { least: 0, most: 1e9, why: 'Above the grid: sums of many pieces and of a whole chain, each within its own bounds.' },
  vehicleMassKg: { least: 0, most: 1_000_000, why: 'What stands on axles: far beyond what a road vehicle has.' },
  vehicleLimitKg: { least: 0.001, most: 1_000_000, why: 'A limit of nothing is no limit but a ban: leave the truck out.' },
  forceN: { least: 1, most: 1e8, why: 'A rated force of less than one newton holds nothing; 10^8 N are some 10,000 t.' },
  tensionN: { least: 1, most: 1e6, why: 'A line that is pulled; 10^6 N are some 100 t.' },
  ratedLoad: { least: 0.001, most: 10_000_000, why: 'In its own unit, from a gram per kilogram to 10,000 t in kilograms.' },
  lengthMm: { least: 1, most: 100_000, why: 'A body has at least a millimetre; 100 m is longer than what is brought to a hall.' },
  bodyMm: { least: 1, most: 10_000, why: 'A height of a body that hangs: at most 10 m.' },
  caseBodyMm: {
    least: 1e-6,
    most: 10_000,
    why: 'Of a case file: what textbooks hang from one line has no height, and is written so; no result is divided by it.',
  },
  caseApartMm: {
    least: 1,
    most: 100_000,
    why: 'Two axles of a case file, which may be in a unit of its own; nearer than 1 mm they share no load that could be told (geometry).',
  },
  clearMm: { least: 0, most: 100_000, why: 'A distance that may be nothing: an offset to keep to, a deck.' },
  offsetMm: { least: -100_000, most: 100_000, why: 'A place from an origin, both ways: at most 100 m.' },
  leverMm: {
    least: 10,
    most: 10_000,
    why: 'From the front pins to the rear link: nearer than 10 mm it carries no moment that a box could stand (geometry).',
  },
  wheelbaseMm: { least: 500, most: 100_000, why: 'Two axles closer than a wheel is wide cannot stand behind one another (geometry).' },
  axleMm: { least: -20_000, most: 40_000, why: 'From the nose: a road train ends at 18.75 m (Directive 96/53/EC, Annex I, 1.1).' },
  heightMm: { least: 1, most: 60_000, why: 'A trim height: above the roofs of halls.' },
  chainM: { least: 0.1, most: 1000, why: 'A chain of a hoist: from a few links to far above the highest roof.' },
  chainKgPerM: { least: 0, most: 100_000, why: 'Of a chain; nothing where none is told.' },
  gravityMps2: { least: 0.1, most: 30, why: 'At sea level 9.78 to 9.83 (WGS 84); wider for whoever tries a case, never nothing.' },
  factor: { least: 1, most: 50, why: 'A dynamic factor or coefficient below 1 would take load away.' },
  regimeFactor: { least: 1, most: 5, why: 'Of a regime: five times the load is no rule for lifting any more.' },
  regimeSlope: { least: 0, most: 5, why: 'Factor for each metre a second, and metres a second of a hoist.' },
  angleDeg: { least: -90, most: 90, why: 'An angle of a joint or an aim: beyond upright it is the other way round.' },
  tiltDeg: { least: -89, most: 89, why: 'Of a grid: on its edge its holes stand above one another.' },
  turnDeg: { least: -180, most: 180, why: 'A bearing.' },
  legDeg: { least: 0, most: 90, why: 'From the horizontal to the vertical, or as far from level.' },
  share: { least: 0, most: 1, why: 'A part of a whole, nothing and all of it too.' },
  usableShare: {
    least: 0.01,
    most: 1,
    why: 'What may be used of a rated load: less than a hundredth is a per cent written as a share of a share.',
  },
  smallShare: { least: 0.001, most: 0.5, why: 'What a piece may lose of a dimension: half of it is gone long before.' },
  reserveShare: { least: 0, most: 0.45, why: 'Of the weight for each of two picks: with half each nothing is left to move.' },
  speedMps: { least: 0.1, most: 100, why: 'Wind in which something may hang: at 100 m/s nothing stands.' },
  cost: { least: 0.01, most: 10_000_000, why: 'In the currency of the house: from its smallest coin.' },
  weight: { least: 0, most: 1e6, why: 'How much a wish weighs against others.' },
  losses: { least: 0, most: 1e6, why: 'Counted pieces, parts of them where they are believed.' },
  believedLosses: {
    least: 1e-6,
    most: 1e6,
    why: 'A belief of no losses at all could never be taught otherwise (gamma-Poisson: shape above 0).',
  },
  pieceUses: { least: 0, most: 1e9, why: 'Pieces times uses: a million pieces a thousand times.' },
  believedUses: { least: 1e-6, most: 1e9, why: 'A belief from no use at all has no rate (gamma-Poisson: rate above 0).' },
  uses: { least: 0, most: 1_000_000, why: 'Of one piece: more often than every hour of a century.' },
  pieces: { least: 0, most: 10_000_000, why: 'Pieces of one line of hardware.' },
  count: { least: 0, most: 1_000_000, why: 'Things that are counted.' },
} as const satisfies Readonly<Record<string, Bounds>>;

export type Quantity = keyof typeof quantities;

/** A number of this kind. */
export const quantity = (kind: Quantity) => z.number().min(quantities[kind].least).max(quantities[kind].most);

/** A whole number of this kind; a kind that begins below 1 but above 0 begins at 1. */
export const wholeQuantity = (kind: Quantity) => z.int().min(Math.ceil(quantities[kind].least)).max(quantities[kind].most);
