import { adapterBetween } from '#tour-file';
import type { HardwareFinding, LineSubject } from '#trade';
import type { HardwareLine, HardwareResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { askedOf, goesWith, ownHoists } from './hoist-control.js';

/** What cannot be covered, with number, size and dates; counts that do not agree; chains that are too short; a trunk below its level. */
export function hardwareFindings(inputs: PlanInputs, hardware: HardwareResult): HardwareFinding[] {
  return [
    ...hardware.lines.filter(isNews).map(missing),
    ...differences(hardware.lines.filter((line) => line.difference !== 0)),
    ...keptWithBoxes(hardware),
    ...frames(inputs),
    ...control(inputs),
    ...notInLoads(inputs),
    ...shortChains(hardware),
    ...unknownHeights(inputs, hardware),
  ];
}

/** A missing hoist or grid of a hang is said beside its pick already. */
const isNews = (line: HardwareLine): boolean => line.missing > 0 && ((line.item !== 'hoist' && line.item !== 'grid') || line.spares > 0);

const travelling = (line: HardwareLine): number => line.withBox + line.withCart + line.loose;
const subjectOf = ({ item, model, size }: HardwareLine): LineSubject => ({ kind: 'line', item, model, size });

const missing = (line: HardwareLine): HardwareFinding => ({
  code: 'hardware-missing',
  subjects: { line: subjectOf(line), lots: line.outOfUse.map((each) => ({ kind: 'item', id: each.lot })) },
  numbers: {
    missing: line.missing,
    travelling: travelling(line),
    spares: line.spares,
    onHand: line.onHand,
    keptAtHome: line.keptAtHome,
  },
  date: line.shortOn!.from,
  days: line.shortOn!,
  outOfUse: line.outOfUse.flatMap(({ lot, count, fact }) => (fact === null ? [] : [{ lot, count, why: fact }])),
});

/** All lines that do not come out even in one finding: they have one cause. */
function differences(lines: readonly HardwareLine[]): HardwareFinding[] {
  if (lines.length === 0) return [];
  return [
    {
      code: 'travelling-and-fitted-differ',
      subjects: { lines: lines.map(subjectOf) },
      numbers: {},
      date: null,
      counts: lines.map((line) => ({
        item: line.item,
        model: line.model,
        travelling: travelling(line),
        staysInBox: line.staysInBox,
        fitted: line.fitted,
        difference: line.difference,
      })),
    },
  ];
}

const keptWithBoxes = (hardware: HardwareResult): HardwareFinding[] =>
  hardware.keptWithBoxes
    .filter((each) => each.byModels !== each.onFile)
    .map(({ model, onFile, byModels }) => ({
      code: 'kept-with-boxes-differs',
      subjects: { model: { kind: 'model', id: model } },
      numbers: { onFile, byModels },
      date: null,
    }));

/** What goes with the hoists of this kit and is named with no model: it cannot be counted. */
function control(inputs: PlanInputs): HardwareFinding[] {
  const hoists = inputs.hangs.flatMap((hang) => ownHoists(inputs, hang));
  const lacking = [...new Set(hoists)].flatMap((hoist) => {
    const parts = askedOf(inputs).filter((part) => hoist[part] === undefined);
    return parts.length === 0 ? [] : [{ model: hoist.model, hoists: hoists.filter((each) => each === hoist).length, parts }];
  });
  if (lacking.length === 0) return [];
  return [
    {
      code: 'control-not-counted',
      subjects: { models: lacking.map(({ model }) => ({ kind: 'model', id: model })) },
      numbers: {},
      date: null,
      lacking: lacking.map((each) => ({ ...each, parts: each.parts.map((part) => goesWith[part]) })),
    },
  ];
}

/** Chain bags and cells hang at the points as well; the loads are worked out without them. */
function notInLoads(inputs: PlanInputs): HardwareFinding[] {
  const { aids, cells } = inputs.file.catalogue;
  const asked = askedOf(inputs);
  const hoists = inputs.hangs.flatMap((hang) => ownHoists(inputs, hang));
  const each = hoists.map((hoist) => ({
    'chain bag': aids.find(({ model }) => model === hoist.chainBag)?.massKg ?? 0,
    'load cell': asked.includes('cell') ? (cells.find(({ model }) => model === hoist.cell)?.massKg ?? 0) : 0,
  }));
  const massKg = Math.max(0, ...each.map((part) => part['chain bag'] + part['load cell']));
  if (massKg === 0) return [];
  const parts = (['chain bag', 'load cell'] as const).filter((part) => each.some((found) => found[part] > 0));
  const heightMm = asked.includes('cell')
    ? Math.max(0, ...hoists.map((hoist) => cells.find(({ model }) => model === hoist.cell)?.insideMm ?? 0))
    : 0;
  const { id, name } = inputs.show;
  return [
    { code: 'control-not-in-loads', subjects: { show: { kind: 'show', id, name } }, numbers: { massKg, heightMm }, date: null, parts },
  ];
}

/** Frames between boxes whose model is not on file have no stock, and no pins of their own. */
function frames(inputs: PlanInputs): HardwareFinding[] {
  const joints = inputs.hangs.flatMap((hang) =>
    hang.boxes.slice(1).flatMap((box, index) => {
      const frame = adapterBetween(inputs.file.systems, hang.boxes[index]!.model, box.model);
      return frame && frame.model === undefined ? [frame.id] : [];
    }),
  );
  return [...new Set(joints)].map((id) => ({
    code: 'frame-not-counted',
    subjects: { model: { kind: 'model', id } },
    numbers: { frames: joints.filter((each) => each === id).length },
    date: null,
  }));
}

const shortChains = ({ chains }: HardwareResult): HardwareFinding[] =>
  chains
    .filter((each) => !each.enough)
    .map(({ hang, hangName: name, hole, hoist, serial, onFileM, neededM, pointHeightMm }) => ({
      code: 'chain-too-short',
      subjects: {
        pick: { kind: 'pick', hang, name, hole },
        hoist: serial === null ? { kind: 'model', id: hoist } : { kind: 'item', id: serial },
      },
      numbers: { onFileM, neededM, pointHeightMm },
      date: null,
    }));

function unknownHeights({ show: { id, name } }: PlanInputs, { chains }: HardwareResult): HardwareFinding[] {
  const hangs = new Map(chains.filter((each) => each.pointHeightMm === null).map((each) => [each.hang, each.hangName]));
  if (hangs.size === 0) return [];
  return [
    {
      code: 'no-point-height',
      subjects: { show: { kind: 'show', id, name }, hangs: [...hangs].map(([hang, called]) => ({ kind: 'hang', id: hang, name: called })) },
      numbers: {},
      date: null,
    },
  ];
}
