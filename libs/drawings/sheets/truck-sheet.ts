import { type AxleStop, type PackPlan, type TruckResult, type TruckResultOne, concernsTruck, groupOf } from '#pack-plan';
import { type Node, type Units, formatLength, formatMass, formatShort, node } from '../tree/index.js';
import { drawStowingStep, drawTruckPlan, drawTruckSide, spaceName } from '../truck/index.js';
import { type SheetContext, caution, findingList, mono, sheet, table, tickBox } from '../paper/index.js';

/** Pieces that come off, or go in, one after another at one place of the order of the show. */
export interface OrderStep {
  readonly what: string;
  readonly pieces: readonly string[];
}

/** An order of pieces cut into its steps: "Cable: CT-01, CT-02", "Main left, 1st cart: K04". */
export function orderSteps(truck: TruckResultOne, order: readonly string[]): readonly OrderStep[] {
  const placements = new Map(truck.placements.map((each) => [each.id, each]));
  const steps: { what: string; pieces: string[] }[] = [];
  for (const id of order) {
    const at = placements.get(id)!;
    // A case is called by its group, a cart by its hang and number.
    const what = at.fact.isCase ? groupOf(at) : at.label;
    const last = steps.at(-1);
    if (last?.what === what) last.pieces.push(id);
    else steps.push({ what, pieces: [id] });
  }
  return steps;
}

/** Which truck goes to the dock first; null where there is one alone. */
export function dockSentence({ dockOrder }: Pick<TruckResult, 'dockOrder'>): string | null {
  if (!dockOrder || dockOrder.length < 2) return null;
  const order = dockOrder.map(({ truck, first }) => `${truck} (first off: ${first})`).join(', then ');
  return `To the dock: ${order}. At the load-out the other way round: ${[...dockOrder]
    .reverse()
    .map((each) => each.truck)
    .join(', then ')}.`;
}

/** How far the load stands to one side, in words. */
export function sideWords(offsetMm: number, units: Units): string {
  const by = formatShort(Math.abs(offsetMm), units);
  return Math.abs(offsetMm) < 0.5 ? 'in the middle' : `${by} ${offsetMm > 0 ? 'right' : 'left'}`;
}

/** Neighbours in a row that are called the same, and what else is to be said of each. */
export interface RowPart {
  readonly what: string;
  readonly pieces: readonly { readonly id: string; readonly more: string }[];
}

/** The pieces of a row from left to right, those of one name together: "Cable trunk, turned: CT-11, CT-13 on top". */
export function rowParts(truck: TruckResultOne, pieces: readonly string[]): readonly RowPart[] {
  const placements = new Map(truck.placements.map((each) => [each.id, each]));
  const kept = new Map((truck.kept ?? []).map((each) => [each.piece, each.loaded ? ', loaded' : ', stays']));
  const parts: { what: string; pieces: { id: string; more: string }[] }[] = [];
  for (const id of pieces) {
    const at = placements.get(id)!;
    const what = `${at.label.replace(` ${id}`, '')}${at.turned ? ', turned' : ''}`;
    const more = `${at.zMm > 0 ? ' on top' : ''}${kept.get(id) ?? ''}${at.tag === null ? '' : ` ■ ${at.tag}`}`;
    const last = parts.at(-1);
    if (last?.what === what) last.pieces.push({ id, more });
    else parts.push({ what, pieces: [{ id, more }] });
  }
  return parts;
}

const listed = (pieces: RowPart['pieces']): (Node | string)[] =>
  pieces.flatMap(({ id, more }, index) => [index > 0 ? ', ' : '', mono(id), more]);

const gapOf = (mm: number, units: Units): string => (mm === 0 ? '–' : formatShort(mm, units));

const rowTable = (truck: TruckResultOne, units: Units): Node =>
  table(
    [
      '',
      { right: 'Row' },
      'Pieces, left to right',
      { right: 'From the nose' },
      { right: 'Mass' },
      { right: 'Free ahead' },
      { right: 'Free across' },
      { right: 'Bar at' },
    ],
    truck.rows.map((row) => [
      tickBox(),
      { right: String(row.number) },
      node(
        'span',
        {},
        ...rowParts(truck, row.pieces).flatMap(({ what, pieces }, index) => [`${index > 0 ? '; ' : ''}${what}: `, ...listed(pieces)]),
      ),
      { right: `${formatLength(row.fromMm, units)} – ${formatLength(row.toMm, units)}` },
      { right: formatMass(row.massKg, units) },
      { right: gapOf(row.gapAheadMm ?? 0, units) },
      { right: gapOf(row.gapAcrossMm, units) },
      { right: row.barAtMm === null ? '' : formatLength(row.barAtMm, units) },
    ]),
  );

/** Loads full and after each stop; of a plan made before these were worked out the whole load alone. */
export function stopsOf(truck: TruckResultOne): readonly AxleStop[] {
  if (truck.stops) return truck.stops;
  const loads = truck.axles.map(({ axle, loadKg, limitKg, fact }) => ({
    axle,
    fact,
    loadKg,
    limitKg,
    leastKg: null,
    verdict: limitKg === null ? ('no limit on file' as const) : loadKg > limitKg ? ('over' as const) : ('within' as const),
  }));
  return [{ off: null, massKg: truck.massKg, sideOffsetMm: truck.sideOffsetMm, sideLimitMm: null, loads }];
}

const marks = { within: '', over: ' ■ over', 'too light': ' ■ too light', 'no limit on file': '' } as const;

/** Axle loads of the whole load and after each stop; a value outside its limit says so in words. */
function axleTable(truck: TruckResultOne, units: Units): Node {
  const stops = stopsOf(truck);
  const first = stops[0];
  if (!first || first.loads.length === 0)
    return node('p', { class: 'stop' }, 'No axle figures are on file for this truck: its axle loads are not known.');
  return table(
    ['', ...first.loads.map((each) => ({ right: each.axle })), { right: 'Load' }, { right: 'Off the middle' }],
    [
      [
        'Limit',
        ...first.loads.map((each) => ({ right: each.limitKg === null ? 'none on file' : formatMass(each.limitKg, units) })),
        { right: truck.payloadKg > 0 ? formatMass(truck.payloadKg, units) : 'none on file' },
        { right: first.sideLimitMm === null ? 'none on file' : formatShort(first.sideLimitMm, units) },
      ],
      ...stops.map((stop) => [
        stop.off === null ? 'Full' : `${stop.off} off`,
        ...stop.loads.map((each) => ({ right: `${formatMass(each.loadKg, units)}${marks[each.verdict]}` })),
        { right: formatMass(stop.massKg, units) },
        {
          right: `${sideWords(stop.sideOffsetMm, units)}${first.sideLimitMm !== null && Math.abs(stop.sideOffsetMm) > first.sideLimitMm ? marks.over : ''}`,
        },
      ]),
    ],
  );
}

/** A part load outside its limits, in one sentence: it matters only where the truck is driven like that. */
export function partLoadSentence(truck: TruckResultOne): string | null {
  const isOutside = stopsOf(truck)
    .slice(1)
    .some((stop) => stop.loads.some((each) => each.verdict === 'over' || each.verdict === 'too light'));
  return isOutside ? 'Part unloaded it goes outside a limit, marked ■: do not drive it like that.' : null;
}

/** Where nothing is loaded there is still something to say: what stays behind, and why. None where the plan has trucks, or nothing to say of them. */
export function noTruckSheets(context: SheetContext): readonly Node[] {
  const { truck, findings } = context.plan;
  const said = findingList(findings, 'truck');
  return truck.trucks.length > 0 || said === null ? [] : [sheet(context, 'Trucks', 'No truck in this plan', said, caution(truck.caution))];
}

/** A figure of a stowed load beside what it is compared with; where nothing is on file to compare it with, that is said. */
export interface StowageLine {
  readonly what: string;
  readonly value: string;
  readonly most: string;
  readonly isOver: boolean;
}

/** What the load of a container or pallet as a whole comes to, each against its limit. */
export function stowageLines(truck: TruckResultOne, units: Units): readonly StowageLine[] {
  const { stowage } = truck;
  if (!stowage) return [];
  const { heaviestMetreKg, heaviestMetreFromMm, mostKgPerMetre, endOffsetMm, mostEndOffsetMm, mostSideOffsetMm } = stowage;
  const line = (what: string, value: number, most: number | null, told: (value: number) => string, said = told(value)): StowageLine => ({
    what,
    value: said,
    most: most === null ? 'none on file' : told(most),
    isOver: most !== null && value > most + 1e-6,
  });
  const mass = (kg: number) => formatMass(kg, units);
  const short = (mm: number) => formatShort(mm, units);
  const end =
    Math.abs(endOffsetMm) < 0.5 ? 'in the middle' : `${short(Math.abs(endOffsetMm))} toward the ${endOffsetMm > 0 ? 'door' : 'nose'}`;
  return [
    line('Load', truck.massKg, truck.payloadKg, mass),
    line(`On the metre from ${formatLength(heaviestMetreFromMm, units)}`, heaviestMetreKg, mostKgPerMetre, mass),
    line('Centre, along', Math.abs(endOffsetMm), mostEndOffsetMm, short, end),
    line('Centre, across', Math.abs(truck.sideOffsetMm), mostSideOffsetMm, short, sideWords(truck.sideOffsetMm, units)),
  ];
}

/** Where nothing is on file to compare with, in one sentence; null where everything is. */
export function unlimitedSentence(truck: TruckResultOne): string | null {
  const missing = stowageLines(truck, 'metric').filter((each) => each.most === 'none on file');
  return missing.length === 0
    ? null
    : `Not compared, for no limit is on file: ${missing.map((each) => each.what.toLowerCase()).join('; ')}. Ask for the plate or the carrier’s sheet.`;
}

const stowingTable = (truck: TruckResultOne, units: Units): Node => {
  const at = new Map(truck.placements.map((each) => [each.id, each]));
  return table(
    [
      '',
      { right: 'Step' },
      'Piece',
      { right: 'From the nose' },
      { right: 'From the left wall' },
      { right: 'Above the floor' },
      { right: 'Mass' },
    ],
    truck.rows.flatMap((row) =>
      row.pieces.map((id) => {
        const piece = at.get(id)!;
        return [
          tickBox(),
          { right: String(row.number) },
          node(
            'span',
            {},
            `${piece.label.replace(` ${id}`, '')}${piece.turned ? ', turned' : ''}: `,
            mono(id),
            piece.tag === null ? '' : ` ■ ${piece.tag}`,
          ),
          { right: formatLength(piece.xMm, units) },
          { right: formatShort(piece.yMm, units) },
          { right: piece.zMm === 0 ? 'on the floor' : formatShort(piece.zMm, units) },
          { right: formatMass(piece.massKg, units) },
        ];
      }),
    ),
  );
};

/** A container or pallet: step by step how it is stowed, and what the whole of it comes to. */
function stowageSheet(context: SheetContext, truck: TruckResultOne, units: Units): Node {
  const unlimited = unlimitedSentence(truck);
  return sheet(
    context,
    spaceName(truck),
    `${truck.model} · ${truck.placements.length} pieces, ${formatMass(truck.massKg, units)} of ${formatMass(truck.payloadKg, units)}`,
    drawTruckPlan(truck),
    drawTruckSide(truck),
    node('h2', {}, 'The load as a whole'),
    node(
      'div',
      { class: 'tight' },
      table(
        ['', { right: 'Comes to' }, { right: 'Limit' }],
        stowageLines(truck, units).map((each) => [
          each.what,
          { right: `${each.value}${each.isOver ? marks.over : ''}` },
          { right: each.most },
        ]),
      ),
    ),
    unlimited === null ? null : node('p', { class: 'stop' }, unlimited),
    node('h2', {}, 'Stow in this order, this side up; dark is what goes in now'),
    node('div', { class: 'stowing' }, ...truck.rows.map((_, index) => node('div', { class: 'together' }, drawStowingStep(truck, index)))),
    node('div', { class: 'tight' }, stowingTable(truck, units)),
    caution(context.plan.truck.caution),
    findingList(
      context.plan.findings.filter((each) => concernsTruck(each, truck.id)),
      'truck',
    ),
  );
}

/** One truck for the dock: rows to build, axles full and after each stop, and what goes in first at the load-out. */
export function truckSheet(context: SheetContext, truck: TruckResultOne, units: Units = 'metric'): Node {
  if (truck.kind) return stowageSheet(context, truck, units);
  const { plan } = context;
  const dock = dockSentence(plan.truck);
  const partLoad = partLoadSentence(truck);
  return sheet(
    context,
    `Truck ${truck.id}`,
    `${truck.model} · ${truck.placements.length} pieces, ${formatMass(truck.massKg, units)} of ${formatMass(truck.payloadKg, units)}`,
    dock === null ? null : node('p', {}, dock),
    drawTruckPlan(truck),
    drawTruckSide(truck),
    node('h2', {}, 'Load from the nose; unload from the door'),
    node('div', { class: 'tight' }, rowTable(truck, units)),
    ...notesOf(plan, truck),
    node('h2', {}, 'Axles, full and as it is unloaded'),
    node('div', { class: 'tight' }, axleTable(truck, units)),
    partLoad === null ? null : node('p', { class: 'stop' }, partLoad),
    truck.bridge
      ? node('p', { class: truck.bridge.status === 'within' ? '' : 'stop' }, `${truck.bridge.sentence} ${truck.bridge.source}.`)
      : null,
    caution(plan.truck.caution),
    node('h2', {}, 'At the load-out: what goes in first'),
    node(
      'ol',
      { class: 'inorder' },
      ...orderSteps(truck, truck.loadOutOrder ?? truck.loadingOrder).map(({ what, pieces }) =>
        node('li', {}, `${what}: `, ...listed(pieces.map((id) => ({ id, more: '' })))),
      ),
    ),
    findingList(
      plan.findings.filter((each) => concernsTruck(each, truck.id)),
      'truck',
    ),
  );
}

/** What was wanted at the dock, as far as it is about this truck; what is waived stands among the findings. */
function notesOf(plan: PackPlan, truck: TruckResultOne): Node[] {
  const here = new Set(truck.placements.flatMap((each) => [each.id, each.group ?? '']));
  const notes = (plan.truck.notes ?? []).filter(
    (each) =>
      (each.kind === 'kept' && each.subject === truck.id) || ((each.kind === 'taken' || each.kind === 'end') && here.has(each.subject)),
  );
  return notes.length === 0 ? [] : [node('p', {}, notes.map((each) => each.sentence).join(' '))];
}
