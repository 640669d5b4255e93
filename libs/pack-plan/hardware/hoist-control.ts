import { type Hang, type HoistModel, hangName } from '#tour-file';
import { isOurs } from '../picks/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';

/** Pieces that go with hoists and lift nothing themselves, but the cells; `hang` is empty for what the whole show shares. */
export interface ControlPieces {
  readonly model: string;
  readonly item: string;
  readonly count: number;
  readonly where: string;
  readonly hang: string;
}

/** What a hoist is asked for, with the field of its model; a cell only where the regime of the show says how far one may read from what was worked out. */
export const goesWith = { motorCable: 'motor cable', chainBag: 'chain bag', cell: 'load cell', controller: 'controller' } as const;
type Part = keyof typeof goesWith;
export const askedOf = ({ loadRule }: PlanInputs): readonly Part[] =>
  (Object.keys(goesWith) as Part[]).filter((part) => part !== 'cell' || loadRule.reading !== undefined);

/** Hoists of a hang that are of this kit. Others bring control with theirs. */
export const ownHoists = (inputs: PlanInputs, hang: Hang): readonly HoistModel[] =>
  hang.picks.filter(isOurs).map((pick) => modelOf(inputs.file.catalogue.hoists, pick.hoist));

/**
 * By rule: a motor cable and a chain bag for each hoist, a cell where loads are read, a controller for as many hoists as it runs and what goes with each;
 * the tag lines of the rigging system for each hang.
 */
export function controlOf(inputs: PlanInputs): ControlPieces[] {
  const { catalogue, systems } = inputs.file;
  const pieces: ControlPieces[] = [];
  const parts = askedOf(inputs).filter((part) => part !== 'controller');
  const run = new Map<string, number>();
  for (const hang of inputs.hangs) {
    for (const hoist of ownHoists(inputs, hang)) {
      for (const part of parts) {
        const model = hoist[part];
        if (model !== undefined) pieces.push({ model, item: goesWith[part], count: 1, where: `${hangName(hang)}, hoists`, hang: hang.id });
      }
      if (hoist.controller !== undefined) run.set(hoist.controller, (run.get(hoist.controller) ?? 0) + 1);
    }
    const system = systems.find((each) => each.id === modelOf(catalogue.grids, hang.grid).system);
    for (const model of system?.tagLines ?? [])
      pieces.push({ model, item: 'tag line', count: 1, where: `${hangName(hang)}, tag lines`, hang: hang.id });
  }
  for (const [name, hoists] of run) {
    const controller = modelOf(catalogue.controls, name);
    const count = Math.ceil(hoists / (controller.hoists ?? 1));
    const where = `${hoists} hoists of the show, ${controller.hoists} a controller`;
    pieces.push({ model: name, item: 'controller', count, where, hang: '' });
    for (const each of controller.with ?? [])
      pieces.push({
        model: each.model,
        item: modelOf(catalogue.controls, each.model).part,
        count: count * each.count,
        where: `${each.count} with each controller`,
        hang: '',
      });
  }
  return pieces;
}
