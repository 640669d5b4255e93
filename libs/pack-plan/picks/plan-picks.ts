import { type HangCase, bodiesAt, degrees, hangOutline, holeTilts, solveHang, tiltRange, together, verifyHang } from '#hang-statics';
import { canonicalJson, standardGravityMps2, textHash } from '#kernel';
import { type GridModel, type Hang, hangName } from '#tour-file';
import type { WantedLoad } from '../carts/index.js';
import { type Comparison, type HangResult, type LiftCase, type PicksResult, checkedBy, mismatchesOf } from '../contract/index.js';
import { sentenceOf, tell } from '#words';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { belowPublished, compareJoint, compareSteel, dynamicFactorOf, metalFactors, useCaseOf } from '../rules/index.js';
import type { ChosenItem } from './chosen-items.js';
import { type HangBodies, hangBodies, pickMasses } from './hang-bodies.js';
import type { LoadOnCart } from './load-on-cart.js';
import { measureFinding } from './pick-findings.js';
import { pickResult } from './pick-result.js';
import { planPullBack } from './plan-pull-back.js';
import { planStages } from './plan-stages.js';
import { clearances, planRoom, rollIns, rolledIn } from '../room/index.js';
import { jointsAlone, stepFact } from '../lift/index.js';
import { runningOrder } from './running-order.js';

const loadCaution =
  'Loads are computed from the figures on file. A competent person confirms them against the maker’s rated data, local rules and the structure before anything is lifted.';

/** What each hang weighs, where it balances, what each pick carries and what every joint passes on, compared with what is on file. */
export function planPicks(
  inputs: PlanInputs,
  loads: readonly WantedLoad[],
  onCarts: readonly LoadOnCart[],
  chosen: readonly ChosenItem[],
): PicksResult {
  const { loadRule, show, words } = inputs;
  const hangs = inputs.hangs.map((hang) =>
    planHang(
      inputs,
      hang,
      loads.filter((each) => each.hang.id === hang.id),
      onCarts,
      chosen,
    ),
  );
  const below = belowPublished(loadRule).map(({ fact }) => tell(words.belowPublished, fact));
  return {
    hangs,
    loadRule: {
      id: loadRule.id,
      jurisdiction: loadRule.jurisdiction,
      title: loadRule.title,
      edition: loadRule.edition ?? null,
      contentMark: textHash(canonicalJson({ ...loadRule, unaccepted: undefined })).slice(0, 8),
      belowPublished: below,
      source: loadRule.source,
      status: loadRule.status,
      dynamicFactor: dynamicFactorOf(loadRule),
      usableShare: show.personsBelow ? loadRule.usableShareWithPersonsBelow : 1,
      readingTolerance: loadRule.reading?.toleranceShare ?? null,
    },
    site: {
      datum: show.datum ?? null,
      personsBelow: show.personsBelow,
      movesOverPersons: show.movesOverPersons === true,
      ...useCase(inputs),
      isOutdoor: show.outdoor === true,
      windAction: show.windAction ?? null,
      // Filled where points become sums.
      beams: [],
      clearances: clearances(hangs, (id) => {
        const hang = inputs.hangs.find((each) => each.id === id);
        const own = onCarts.filter((each) => each.hang === id);
        return hang && rolledIn(inputs, hang, own);
      }),
      ...(show.hangsApartMm === undefined ? {} : { leastApartMm: show.hangsApartMm }),
    },
    // Whatever shows a figure that is compared shows this.
    caution: [loadCaution, ...below].join(' '),
  };
}

/** The use case that loads are compared with, where the regime has any. */
function useCase({ loadRule, show }: PlanInputs): Pick<NonNullable<PicksResult['site']>, 'useCase'> {
  const use = useCaseOf(loadRule, show);
  if (!use) return {};
  return { useCase: use.found ? { name: use.found.useCase, isNamed: show.useCase !== undefined } : null };
}

function planHang(
  inputs: PlanInputs,
  hang: Hang,
  loads: readonly WantedLoad[],
  onCarts: readonly LoadOnCart[],
  chosen: readonly ChosenItem[],
): HangResult {
  const { catalogue, systems } = inputs.file;
  const grid = modelOf(catalogue.grids, hang.grid);
  const whole = hangBodies(inputs, hang, loads);
  const drawnAt = (tiltDownDeg: number) => outlineOf(inputs, hang, grid, whole, tiltDownDeg);
  const pulled = planPullBack(inputs, hang, whole, drawnAt);
  const problem = whole.problem;
  const answer = pulled?.answer ?? solveHang(problem);
  const own = onCarts.filter((each) => each.hang === hang.id);
  const planned = new Map(own.flatMap((load) => load.boxes.map((box) => [box.position, { ...box, cart: load.cart }] as const)));
  const system = systems.find((each) => each.id === grid.system);
  const placed = bodiesAt(problem, answer.tiltDownDeg).map((each) => ({ ...each, tiltDownDeg: degrees(each.theta) }));
  const outline = drawnAt(answer.tiltDownDeg);
  const isShared = hang.picks.length <= 2;
  const stages = isShared ? planStages(inputs, hang, whole, own, pulled?.pull) : null;
  return {
    hang: hang.id,
    name: hangName(hang),
    mirrorOf: hang.mirrorOf ?? null,
    grid: grid.model,
    gridSerial: chosen.find((each) => each.hang === hang.id && each.kind === 'grid')?.item ?? null,
    system: grid.system,
    systemApproved: system?.approved !== undefined,
    goesUp: hang.goesUp,
    trimHeightMm: hang.trimHeightMm,
    tiltDownDeg: answer.tiltDownDeg,
    bottomAimDownDeg: answer.bottomAimDownDeg,
    massKg: answer.massKg,
    centreOfGravity: answer.centreOfGravity,
    slackAtDeg: isShared && !pulled ? (answer.slackAtDeg ?? null) : null,
    tiltRange: isShared && !pulled ? rangeOf(inputs, hang, problem) : null,
    holeTilts: hang.picks.length === 1 ? holeTilts(problem) : [],
    masses: massesOf(hang, grid, whole, answer.tiltDownDeg, planned),
    picks: isShared
      ? hang.picks.map((_, index) =>
          withJoints(
            pickResult(inputs, hang, grid, problem, answer, index, chosen, stages?.envelope ?? null),
            jointsAlone(inputs, hang, whole, index),
          ),
        )
      : [],
    unshared: isShared ? null : unsharedOf(inputs, hang, answer.massKg, chosen),
    joints: answer.joints.map((joint, index) => {
      const { position, frame } = whole.bodies[index]!;
      return {
        position,
        adapter: frame?.id ?? null,
        tiltDownDeg: placed[index + 1]!.tiltDownDeg,
        distanceMm: distanceBelow(placed, index + 1),
        leverMm: problem.boxes[index]!.rearLeverMm,
        loadN: joint.loadN,
        rearLinkN: joint.rearLinkN,
        frontPins: joint.frontPins,
        frontPinN: joint.frontPinN,
        comparisons: compareJoint(
          inputs,
          frame ? { model: frame.id } : modelOf(catalogue.boxes, hang.boxes[position - 1]!.model),
          joint,
          metalFactors(inputs),
        ),
      };
    }),
    stages: stages?.stages ?? [],
    envelope: stages?.envelope ?? null,
    ...(stages ? { lift: stages.lift } : {}),
    pullBack: pulled?.result ?? null,
    secondary: secondaryOf(inputs, hang, answer.massKg),
    windLimitMps: system?.windLimitMps ?? null,
    runningOrder: runningOrder(
      inputs,
      hang,
      own,
      (load, moment) => (stages ? stepFact(stages.solved, (place) => whole.bodies[place - 1]!.position, load, moment) : []),
      stages?.stops,
    ),
    boxes: hang.boxes.map((box, index) => ({
      position: index + 1,
      model: box.model,
      serial: planned.get(index + 1)?.serial ?? null,
      splayDeg: box.splayDeg,
      cart: planned.get(index + 1)?.cart ?? null,
      hangsBelowKg: answer.joints[whole.placeOf(index + 1) - 1]!.loadN / standardGravityMps2,
    })),
    outline,
    room: roomOf(inputs, hang, outline, stages?.lift, own),
    stage: hang.stage ?? null,
    ...checkedBy([
      ...mismatchesOf('statics', hang.id, verifyHang(problem, pulled ? pulled.answer.without : answer)),
      ...(pulled?.mismatches ?? []),
      ...(stages?.mismatches ?? []),
    ]),
  };
}

/** Heights at trim, and on the way there the carts that roll in. */
function roomOf(
  inputs: PlanInputs,
  hang: Hang,
  outline: HangResult['outline'],
  lift: LiftCase | undefined,
  loads: readonly LoadOnCart[],
): NonNullable<HangResult['room']> {
  const room = planRoom(inputs, hang, outline);
  return lift ? { ...room, rollIns: rollIns(inputs, hang, lift, loads, room.picks) } : room;
}

/** What the joints carry while the other pick is slack stands with what the pick carries then. */
const withJoints = (pick: HangResult['picks'][number], joints: readonly Comparison[]): HangResult['picks'][number] =>
  pick.alone?.comparisons ? { ...pick, alone: { ...pick.alone, comparisons: [...pick.alone.comparisons, ...joints] } } : pick;

/** The centre of what hangs below a joint, forward of its front pivot. */
const distanceBelow = (bodies: Parameters<typeof together>[0], place: number): number =>
  together(bodies.slice(place)).cg.xMm - bodies[place]!.pivot.xMm;

function outlineOf(
  inputs: PlanInputs,
  hang: Hang,
  grid: GridModel,
  { problem, bodies }: HangBodies,
  tiltDownDeg: number,
): HangResult['outline'] {
  const { boxes, ...rest } = hangOutline(
    problem,
    tiltDownDeg,
    bodies.map(({ position, frame }) => frame ?? modelOf(inputs.file.catalogue.boxes, hang.boxes[position - 1]!.model)),
    { lengthMm: grid.lengthMm, heightMm: Math.max(...grid.holes.map((each) => each.aboveMm), 60) },
  );
  return {
    ...rest,
    gridWidthMm: grid.widthMm,
    boxes: boxes.flatMap((box, index) => {
      const { position, frame } = bodies[index]!;
      return frame ? [] : [{ ...box, position, widthMm: modelOf(inputs.file.catalogue.boxes, hang.boxes[position - 1]!.model).widthMm }];
    }),
    adapters: boxes.flatMap(({ corners }, index) => {
      const { frame } = bodies[index]!;
      return frame ? [{ id: frame.id, corners }] : [];
    }),
  };
}

function rangeOf(inputs: PlanInputs, hang: Hang, problem: HangCase): HangResult['tiltRange'] {
  const range = tiltRange(problem, inputs.loadRule.reserve?.share ?? 0);
  if (!range) return null;
  const wanted = hang.tiltNeeds ?? { fromDeg: hang.tiltDownDeg!, toDeg: hang.tiltDownDeg! };
  return {
    ...range,
    needs: hang.tiltNeeds ?? null,
    verdict: wanted.fromDeg >= range.fromDeg && wanted.toDeg <= range.toDeg ? 'within' : 'outside',
  };
}

/** Grid, boxes, frames and extras with the centre of each at the tilt of the hang: the list that a rigger sums up by hand. */
function massesOf(
  hang: Hang,
  grid: GridModel,
  { problem, bodies, extras }: HangBodies,
  tiltDownDeg: number,
  planned: ReadonlyMap<number, { readonly serial: string | null }>,
): HangResult['masses'] {
  // An extra acts at the centre of the body that it hangs on.
  const placed = bodiesAt({ ...problem, extras: [] }, tiltDownDeg).map((each) => together([each]));
  const row = (what: string, massKg: number, place: number) => ({ what, massKg, ...placedAt(placed, place) });
  return [
    row(`${grid.model}, the grid`, grid.massKg, 0),
    ...bodies.map(({ position, frame }, index) => {
      if (frame) return row(`frame ${frame.id}, above box ${position}`, frame.massKg, index + 1);
      const serial = planned.get(position)?.serial;
      return row(
        `box ${position}, ${hang.boxes[position - 1]!.model}${serial ? ` ${serial}` : ''}`,
        problem.boxes[index]!.massKg,
        index + 1,
      );
    }),
    ...extras.filter((each) => each.massKg > 0).map(({ what, massKg, place }) => row(what, massKg, place)),
  ];
}

const placedAt = (placed: readonly { readonly cg: { readonly xMm: number; readonly zMm: number } }[], place: number) => ({
  xMm: placed[place]!.cg.xMm,
  zMm: placed[place]!.cg.zMm,
});

function unsharedOf(inputs: PlanInputs, hang: Hang, massKg: number, chosen: readonly ChosenItem[]): HangResult['unshared'] {
  const totalN = massKg * standardGravityMps2;
  const added = hang.picks.reduce((sum, pick) => {
    const { belowHookKg, hoistKg, chainKg } = pickMasses(inputs, pick);
    return sum + belowHookKg + hoistKg + chainKg;
  }, 0);
  return {
    hoists: hang.picks.map(({ hole, hoist }) => ({
      hole,
      hoist,
      serial: chosen.find((each) => each.hang === hang.id && each.hole === hole)?.item ?? null,
    })),
    totalN,
    withSteelAndHoistsN: totalN + added * standardGravityMps2,
    sentence: sentenceOf(inputs.words, measureFinding(hang, hang.picks.length, massKg)),
  };
}

/** Each piece of the secondary suspension against the whole hang, which it has to hold alone. */
const secondaryOf = (inputs: PlanInputs, { secondary }: Hang, massKg: number): Comparison[] =>
  secondary ? compareSteel(inputs, secondary, massKg, 0, 'secondary') : [];
