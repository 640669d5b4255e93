/** A rule that a load breaks, or a claim that is not so. */
export interface Violation {
  readonly code: ViolationCode;
  /** Which of the ways to break it. */
  readonly kind: ViolationKind;
  /** The piece or truck. */
  readonly subject: string;
  /** Other pieces or trucks, or the limit, that it is about. */
  readonly names: readonly string[];
  readonly numbers: Readonly<Record<string, number>>;
  /** All of that in words, after the subject. */
  readonly sentence: string;
}

type Words = (names: readonly string[], numbers: Readonly<Record<string, number>>) => string;

/** The one place where a violation becomes words: code -> kind -> sentence. */
const words = {
  'unknown-piece': {
    kept: () => 'is kept in its place but is no piece of the case',
    waived: () => 'has its unloading order waived but is no piece of the case',
    placed: () => 'is no piece of the case',
  },
  'unknown-truck': {
    kept: ([piece]) => `is no truck of the case; ${piece} is kept in it`,
    answered: () => 'is no truck of the case, or stands twice',
  },
  count: {
    'kept-twice': () => 'is kept in two places',
    'not-once': (_, { times }) => `is placed or left over ${times} times instead of once`,
  },
  waived: { unnamed: () => 'has its unloading order waived, and the answer does not name it' },
  'no-reason': { 'left-over': () => 'is left over without a reason' },
  turned: { turned: () => 'is turned but may not be' },
  'not-whole': { place: () => 'does not stand on whole millimetres' },
  outside: { truck: () => 'does not stand inside the truck' },
  door: { high: () => 'is higher than the door' },
  blocked: { place: () => 'stands in a blocked place' },
  overlap: { piece: ([other]) => `overlaps ${other}` },
  bears: { 'too-much': (_, { loadKg, mostKg }) => `carries ${loadKg} kg, more than ${mostKg}` },
  'floor-only': { stacked: () => 'must stand on the floor' },
  support: { base: (_, { supportedMm2, baseMm2 }) => `only ${supportedMm2} of ${baseMm2} mm2 of its base is supported` },
  order: {
    'rests-on': ([later]) => `${later} rests on it but comes off later`,
    'in-the-way': ([later]) => `${later} stands in its way to the door but comes off later`,
  },
  'loading-order': {
    incomplete: () => 'does not name every piece of the truck once',
    'before-support': ([under]) => `goes in before ${under}, on which it stands`,
    'after-loaded': () => 'is loaded already and must go in before the rest',
    'lane-taken': ([other]) => `goes in when ${other} already stands in its lane`,
  },
  limit: {
    above: ([what], { value, most, stop }) => `${what} ${value}${stop === undefined ? '' : ` after stop ${stop}`} is above ${most}`,
    below: ([what], { value, least, stop }) => `${what} ${value}${stop === undefined ? '' : ` after stop ${stop}`} is below ${least}`,
    'kept-mass': (names, { value, most }) => `what is kept in it, ${names.join(', ')}, weighs ${value} kg, above ${most}`,
    'kept-outside': (names) =>
      `is outside an axle or balance limit with what is kept in it (${names.join(', ')}), and no rows beside it were found that level it`,
  },
  claim: {
    mass: (_, { claimed, value }) => `says ${claimed} kg, weighs ${value}`,
    length: (_, { claimed, value }) => `says ${claimed} mm used, the far end of the last piece is at ${value}`,
    side: (_, { claimed, value }) => `says the centre is ${claimed} mm to one side, it is ${value}`,
    axle: ([axle], { claimed, value }) => `says ${axle} is ${claimed}, it is ${value}`,
    'no-such-axle': ([axle], { claimed }) => `says ${axle} is ${claimed}, and the truck has none`,
  },
  bound: {
    trucks: (_, { bound, value }) => `the bound ${bound} is above ${value}`,
    length: (_, { bound, value }) => `the bound ${bound} is above ${value}`,
  },
  status: { 'not-optimal': () => 'is optimal but a bound is not met' },
  kept: {
    elsewhere: ([truck], { xMm, yMm, zMm, turned }) =>
      `is not where it is kept: ${truck}, ${xMm} / ${yMm} / ${zMm} mm${turned ? ', turned' : ''}`,
  },
} satisfies Record<string, Record<string, Words>>;

export type ViolationCode = keyof typeof words;
type KindOf<C extends ViolationCode> = keyof (typeof words)[C] & string;
export type ViolationKind = { [C in ViolationCode]: KindOf<C> }[ViolationCode];

/** What is said of a violation; its words follow from that. */
export type Said = {
  [C in ViolationCode]: [code: C, kind: KindOf<C>, subject: string, names?: readonly string[], numbers?: Readonly<Record<string, number>>];
}[ViolationCode];

export function violation(...[code, kind, subject, names = [], numbers = {}]: Said): Violation {
  const say = (words[code] as Record<string, Words>)[kind]!;
  return { code, kind, subject, names, numbers, sentence: say(names, numbers) };
}
