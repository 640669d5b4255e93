import { type PicksResult, type PointFacts, pointFacts } from '#pack-plan';
import { mono, table } from '../paper/index.js';
import { type Node, type Units, formatForce, formatLength, formatMass, formatNumber, node } from '../tree/index.js';

type Lifted = PointFacts['picks'][number];

const notOnFile = 'not on file';
const length = (mm: number | null | undefined, units: Units): string =>
  mm === null || mm === undefined ? notOnFile : formatLength(mm, units);
const counted = (models: readonly string[]): string =>
  models.length === 0
    ? 'none on file'
    : [...new Set(models)].map((model) => `${models.filter((each) => each === model).length} × ${model}`).join(', ');

/** Hoist, chain and steel of every pick, once for a bridle: serial or by whom, class, rated load, where its body is, heights, what the chain carries. */
export function kitTable(picks: PicksResult, units: Units): Node {
  const seen = new Set<string>();
  const rows = pointFacts(picks).flatMap((facts) =>
    facts.picks.filter((each) => !seen.has(each.name) && seen.add(each.name)).map((each) => rowOf(facts, each, units)),
  );
  return table(
    [
      'Pick, beam',
      'Hoist',
      'Class, rated',
      'Body',
      'By',
      { right: 'Steel high / low' },
      { right: 'Hook at trim' },
      { right: 'Chain needed / on file' },
      { right: 'Chain carries, rest / worst' },
      'Shackles, slings',
    ],
    rows,
  );
}

function rowOf({ beam, point }: PointFacts, { name, hoist, serial, kit, room }: Lifted, units: Units) {
  const isOthers = kit?.by === 'rigging contractor' || kit?.by === 'venue';
  return [
    node('span', {}, name, node('small', {}, ` ${point.beam ?? 'no beam named'}`)),
    node('span', {}, serial ? mono(serial) : isOthers ? 'theirs' : 'none found', node('small', {}, ` ${hoist}`)),
    kit
      ? `${kit.hoistClass ?? 'class not on file'}, ${formatMass(kit.hoistRatedKg, units)}${kit.ratedFor === undefined ? '' : ` (for ${kit.ratedFor})`}`
      : '–',
    kit?.hoistBody ?? notOnFile,
    kit ? (kit.owner === null ? kit.by : `kit of ${kit.owner}`) : '–',
    { right: `${length(beam?.highSteelMm, units)} / ${length(beam?.lowSteelMm, units)}` },
    { right: length(room?.hookHeightMm, units) },
    { right: `${length(room?.chainToFloorMm ?? room?.hookHeightMm, units)} / ${length(kit?.chainOnFileMm, units)}` },
    { right: kit ? `${formatMass(kit.chainLoadKg.rest, units)} / ${formatMass(kit.chainLoadKg.worst, units)}` : '–' },
    kit ? `${counted(kit.shackles)}; ${counted(kit.slings)}` : '–',
  ];
}

/** Legs of every bridle with their resultant at the apex; nothing where there are none. */
export function legNodes(picks: PicksResult, units: Units): readonly Node[] {
  const legs = pointFacts(picks).filter((each) => each.leg !== null);
  if (legs.length === 0) return [];
  const bridles = [...new Set(legs.map((each) => each.picks[0]?.name ?? ''))];
  const rows = bridles.flatMap((bridle) => {
    const own = legs.filter((each) => each.picks[0]?.name === bridle);
    return [...own.map((each) => legRow(each, units)), resultant(bridle, own, units)];
  });
  return [
    node('h2', {}, 'Legs of bridles'),
    node(
      'div',
      { class: 'dense' },
      table(
        [
          'Leg',
          { right: 'Length' },
          { right: 'From level' },
          { right: 'Apex / anchor height' },
          { right: 'Down, rest / worst' },
          { right: 'Aside, worst' },
          { right: 'Along, worst' },
          'Shackles, slings',
        ],
        rows,
      ),
    ),
  ];
}

function legRow({ point, leg, picks }: PointFacts, units: Units) {
  return [
    point.point,
    { right: length(leg?.lengthMm, units) },
    { right: `${formatNumber(leg?.fromHorizontalDeg ?? 0, 1)}°` },
    { right: `${length(picks[0]?.room?.apexHeightMm, units)} / ${length(point.heightMm, units)}` },
    { right: `${formatForce(point.restN, units)} / ${formatForce(point.verticalN, units)}` },
    { right: `${formatForce(point.horizontalN, units)} toward ${formatNumber(point.directionDeg ?? 0)}°` },
    { right: formatForce(Math.hypot(point.verticalN, point.horizontalN), units) },
    `${counted(leg?.shackles ?? [])}; ${counted(leg?.slings ?? [])}`,
  ];
}

/** What the legs make together: straight down where the hook hangs still. */
function resultant(bridle: string, legs: readonly PointFacts[], units: Units) {
  const sum = (of: (facts: PointFacts) => number) => legs.reduce((total, each) => total + of(each), 0);
  const part = (turn: (angle: number) => number) =>
    sum(({ point }) => point.horizontalN * turn(((point.directionDeg ?? 0) * Math.PI) / 180));
  const [down, aside] = [sum((each) => each.point.verticalN), Math.hypot(part(Math.cos), part(Math.sin))];
  return [
    node('b', {}, `${bridle}: the legs together`),
    '',
    '',
    '',
    {
      right: `${formatForce(
        sum((each) => each.point.restN),
        units,
      )} / ${formatForce(down, units)}`,
    },
    { right: formatForce(aside, units) },
    { right: formatForce(Math.hypot(down, aside), units) },
    '',
  ];
}
