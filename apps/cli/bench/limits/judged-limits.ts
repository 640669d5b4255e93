import { seededRandom } from '#kernel';
import { type ToldFinding, planLoads } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { english, tell } from '#words';
import { type Moment, atRest, liftedMoments } from './lifted-loads.js';
import { type MadeHang, closingOfSeed, madeHang, placeOf } from './made-hangs.js';

const g = 9.80665;
/** A load far above anything that hangs. */
const ample = 5_000_000;
/** Away from a limit by this share of it counts as above or below. */
const hair = 1e-6;

type Kind = 'structure' | 'sling' | 'shackle' | 'grid' | 'hoist' | 'rear-link' | 'front-pin';
const kinds: readonly Kind[] = ['structure', 'sling', 'shackle', 'grid', 'hoist', 'rear-link', 'front-pin'];

/** What else is wrong with a stop: its moment (null: none is wanted) and its figure. */
export type Also = (stop: ToldFinding, moment: string | null, figure: number) => readonly string[];

export interface Tally {
  /** Limits between rest and worst that were stopped as they should be, and limits above the worst that nothing stopped for. */
  between: number;
  above: number;
  /** Kinds of a hang that carry most at rest, where there is nothing between. */
  worstAtRest: number;
  readonly wrong: string[];
}

interface Expected {
  /** By pick, or one for all joints: at rest, at worst, and which moments carry that much; of shackles as much as counts when they are pulled aside. */
  readonly places: readonly { readonly restN: number; readonly worstN: number; readonly at: (moment: string) => number }[];
  readonly share: number;
}

const sideShare = (deg: number): number => (deg <= 5 ? 1 : deg <= 45 ? 0.7 : 0.5);
const loadNames = (made: MadeHang): readonly string[] =>
  made.lift.loads.map(({ first, last }) => `${made.hang.id} ${first === last ? first : `${first}-${last}`}`);
const nameOf = (made: MadeHang, moment: Moment): string =>
  moment.load === null
    ? lineName(moment.name)
    : `${loadNames(made)[moment.load]}${moment.comesDown ? ', coming down' : ''}, ${moment.name}`;

const lineName = (name: string): string =>
  name === 'at trim' ? name : `at trim, the pull-back ${name === 'line taken up' ? 'taken up' : 'half taken up'}`;

/** The first of the hangs from a seed on whose picks both carry at trim; one that would push is refused for that. */
function hangable(written: TourFile, seed: number, id: string, closing: MadeHang['closing']): MadeHang {
  const made = madeHang(written, seed, id, closing);
  return atRest(liftedMoments(made.lift)).every(({ picksN }) => picksN.every((each) => each > 0))
    ? made
    : hangable(written, seed + 1, id, closing);
}

/** What a kind of part carries by the algebra, in newtons, with steel, hoist, chain and factor where they count. */
function expectedOf(made: MadeHang, moments: readonly Moment[], kind: Kind, written: TourFile, persons: number): Expected {
  const { catalogue } = written;
  const [shackle, sling, hoist] = [catalogue.shackles[0]!, catalogue.slings[0]!, catalogue.hoists[0]!];
  const steelN = (2 * shackle.massKg + sling.massKg) * g;
  const hoistN = (hoist.massKg + hoist.chainKgPerM * hoist.chainLengthM) * g;
  const place = (of: (moment: Moment) => number) => {
    const worst = moments.reduce((a, b) => (of(b) > of(a) ? b : a));
    return {
      restN: Math.max(...atRest(moments).map(of)),
      worstN: of(worst),
      at: (name: string) => Math.max(...moments.filter((each) => nameOf(made, each) === name).map(of)),
    };
  };
  const atPicks = (of: (newtons: number, moment: Moment) => number) =>
    [0, 1].map((pick) => place((moment) => of(moment.picksN[pick]!, moment)));
  switch (kind) {
    case 'structure':
      return { places: atPicks((each) => 1.25 * (each + steelN + hoistN)), share: 1 };
    case 'sling':
      return { places: atPicks((each) => each + steelN), share: persons };
    case 'shackle':
      // Half of everything while persons can be below; less of a shackle whose chain inclines by more than 5 degrees.
      return { places: atPicks((each, { inclineDeg }) => (each + steelN) / sideShare(inclineDeg)), share: persons };
    case 'grid':
      return { places: atPicks((each) => each), share: persons };
    case 'hoist':
      return { places: atPicks((each) => each + steelN), share: 1 };
    case 'rear-link':
      return { places: [place((moment) => Math.max(...moment.linksN.map(Math.abs)))], share: persons };
    case 'front-pin':
      return { places: [place((moment) => Math.max(...moment.pinsN.map(Math.abs)))], share: persons };
  }
}

/** The tour with these hangs alone in its first show, everything ample but one kind of part, which may be loaded with `limitN` as the regime reduces it. */
function limited(
  written: TourFile,
  made: MadeHang,
  personsBelow: boolean,
  kind: Kind,
  limitN: number,
  share: number,
): readonly ToldFinding[] {
  const file = structuredClone(written);
  const { hoists, slings, shackles, grids, boxes } = file.catalogue;
  const kg = (of: Kind) => ({ value: kind === of ? limitN / g / share : ample, unit: 'kg' as const });
  hoists[0]!.ratedLoad = kg('hoist');
  slings[0]!.ratedLoad = kg('sling');
  shackles[0]!.ratedLoad = kg('shackle');
  grids[0]!.ratedPick = kg('grid');
  boxes[0]!.ratedRearLinkN = kind === 'rear-link' ? limitN / share : ample;
  boxes[0]!.ratedFrontPinN = kind === 'front-pin' ? limitN / share : ample;
  file.tour.shows[0]!.personsBelow = personsBelow;
  const findings = loadsOf(file, [made], () => (kind === 'structure' ? limitN : ample));
  return findings.filter((each) => each.fact.code === 'over-rated-load');
}

/** What the first show says with these hangs, whose joints close alike, and what the structure may carry at each pick. */
function loadsOf(file: TourFile, made: readonly MadeHang[], structureN: (point: string | undefined) => number): readonly ToldFinding[] {
  const [show] = file.tour.shows;
  for (const each of file.systems) each.closing = made[0]!.closing;
  show!.hangs = made.map(({ hang }) => ({
    ...hang,
    picks: hang.picks.map((pick) => ({ ...pick, structure: { value: structureN(pick.point) / 1000, unit: 'kN' as const } })),
  }));
  return planLoads(file, show!.id).findings;
}

/** One hang: for every kind of part a limit between rest and worst, which must stop at the right picks with moment and figure, and one above, which must not. */
export function judgeHang(written: TourFile, seed: number, tally: Tally, alsoWrong: Also = () => []): void {
  const made = hangable(written, 1000 * seed, 'Centre', closingOfSeed(seed));
  const random = seededRandom(seed + 1_000_000);
  const personsBelow = random() < 0.5;
  const moments = liftedMoments(made.lift);
  const persons = personsBelow ? 0.5 : 1;
  for (const kind of kinds) {
    const { places, share } = expectedOf(made, moments, kind, written, persons);
    // While persons are below the hoist holds the load at rest with half of its rated load.
    const restN = Math.max(...places.map((each) => each.restN)) * (kind === 'hoist' && personsBelow ? 2 : 1);
    const worstN = Math.max(...places.map((each) => each.worstN));
    const note = (text: string) => tally.wrong.push(`seed ${seed}, ${kind}: ${text}`);
    const stopsAt = (limitN: number) => limited(written, made, personsBelow, kind, limitN, share);
    if (stopsAt(Math.max(restN, worstN) * (1 + hair)).length > 0) note('a limit above the worst stops');
    else tally.above++;
    if (worstN <= restN * (1 + 3 * hair)) {
      tally.worstAtRest++;
      continue;
    }
    const limitN = restN + (worstN - restN) * (0.001 + 0.998 * random());
    const found = stopsAt(limitN);
    const wanted = places.flatMap((each, index) => (each.worstN > limitN ? [{ ...each, index }] : []));
    const faults =
      found.length === wanted.length
        ? wanted.flatMap((each, index) => faultsOf(made, found[index]!, kind, each, alsoWrong))
        : [`${found.length} stops, ${wanted.length} wanted (${limitN} N between ${restN} and ${worstN})`];
    faults.forEach(note);
    if (faults.length === 0) tally.between++;
  }
}

/** A stop names the pick (or joint), the moment at which so much is carried, and the figure. */
function faultsOf(
  made: MadeHang,
  finding: ToldFinding,
  kind: Kind,
  wanted: { readonly worstN: number; readonly index: number; readonly at: (moment: string) => number },
  alsoWrong: Also,
): readonly string[] {
  const { fact } = finding;
  if (!('compared' in fact)) return [`it is called ${fact.code}`];
  const { compared, subjects } = fact;
  const isJoint = kind === 'rear-link' || kind === 'front-pin';
  const stage = compared.worstAt?.stage;
  const moment = stage ? tell(english.stages, stage) : 'at trim';
  const { hole } = made.hang.picks[wanted.index]!;
  const named = subjects.at.kind === 'pick' ? subjects.at.hole : 'hole' in compared.part ? compared.part.hole : null;
  const side = compared.factors.find((each) => each.cause.code === 'side-load')?.factor ?? 1;
  const newtons = isJoint ? compared.value : (compared.value * g) / side;
  const near = (a: number, b: number) => Math.abs(a - b) <= 1e-6 * Math.abs(b);
  return [
    ...(near(newtons, wanted.worstN) ? [] : [`${newtons} N are said, ${wanted.worstN} computed`]),
    ...(kind === 'hoist' || near(wanted.at(moment), wanted.worstN) ? [] : [`${moment} is named, where ${wanted.at(moment)} N are carried`]),
    ...(isJoint || named === hole ? [] : [`${named} is named instead of ${hole}`]),
    ...(isJoint && compared.worstAt?.position === undefined ? ['no joint is named'] : []),
    ...alsoWrong(finding, kind === 'hoist' ? null : moment, compared.value),
  ];
}

/** Two or three hangs with one pick each at the same place and of one name: the sum of their worst stops and nothing less; elsewhere the name is refused. */
export function judgeSharedPoint(written: TourFile, seed: number, tally: Tally): void {
  const random = seededRandom(seed + 2_000_000);
  const closing = closingOfSeed(seed);
  const made = Array.from({ length: 2 + Math.floor(random() * 2) }, (_, index) =>
    hangable(written, 1_000_000 * (index + 1) + 1000 * seed, `Hang ${index + 1}`, closing),
  );
  const picks = made.map((): 0 | 1 => (random() < 0.5 ? 0 : 1));
  const at = placeOf(made[0]!, picks[0]!);
  const placed = (apartMm: number) =>
    made.map((each, index): MadeHang => {
      const [x, y] = placeOf(each, picks[index]!);
      const aside = index === made.length - 1 ? apartMm : 0;
      const stage = { ...each.hang.stage!, xMm: each.hang.stage!.xMm + at[0] - x + aside, yMm: each.hang.stage!.yMm + at[1] - y };
      const own = each.hang.picks.map((pick, hole) => (hole === picks[index] ? { ...pick, point: 'Beam 4' } : pick));
      return { ...each, hang: { ...each.hang, stage, picks: own } };
    });
  const sums = made.map((each, index) => expectedOf(each, liftedMoments(each.lift), 'structure', written, 1).places[picks[index]!]!);
  const [restN, worstN] = [sums.reduce((sum, each) => sum + each.restN, 0), sums.reduce((sum, each) => sum + each.worstN, 0)];
  const note = (text: string) => tally.wrong.push(`shared point of seed ${seed}: ${text}`);
  const ofBeam = (findings: readonly ToldFinding[]) =>
    findings.filter((each) => 'at' in each.fact.subjects && isBeam(each.fact.subjects.at));
  const structure = (limitN: number) => loadsOf(structuredClone(written), placed(0), (point) => (point ? limitN : ample));
  const [above, below] = [ofBeam(structure(worstN * (1 + hair))), ofBeam(structure(worstN * (1 - hair)))];
  if (above.length > 0) note('a limit above the sum of the worst stops');
  else tally.above++;
  if (worstN > restN * (1 + 3 * hair)) {
    const between = ofBeam(structure(restN + (worstN - restN) * random()));
    const [stop] = between;
    const isRight =
      between.length === 1 &&
      below.length === 1 &&
      'compared' in stop!.fact &&
      Math.abs(stop!.fact.compared.value * g - worstN) <= 1e-6 * worstN;
    if (isRight) tally.between++;
    else note(`${between.length} stops between, ${below.length} just below the sum of ${worstN} N`);
  } else tally.worstAtRest++;
  const twoPlaces = (apartMm: number) =>
    loadsOf(structuredClone(written), placed(apartMm), () => ample).filter((each) => each.fact.code === 'point-at-two-places').length;
  if (twoPlaces(51) !== 1 || twoPlaces(49) !== 0) note('one name at two places is not told apart from one place');
}

const isBeam = (at: unknown): boolean =>
  (at as { kind?: string; name?: string }).kind === 'point' && (at as { name?: string }).name === 'Beam 4';

export const newTally = (): Tally => ({ between: 0, above: 0, worstAtRest: 0, wrong: [] });
