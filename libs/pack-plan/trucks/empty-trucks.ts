import type { TruckFinding } from '#trade';
import { overWhenEmpty } from '#truck-pack';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { axleOf } from './axle-sheet.js';

/** Trucks of the tour that are over an axle limit before anything is in them: the figures are wrong, or the truck may not go. */
export const emptyTruckFindings = (inputs: PlanInputs): TruckFinding[] =>
  inputs.file.tour.trucks.flatMap((id) =>
    overWhenEmpty(modelOf(inputs.file.catalogue.trucks, inputs.items.get(id)!.model)).map(({ axle, loadKg, most }) => ({
      code: 'over-when-empty',
      subjects: { truck: { kind: 'truck', id }, axle: { kind: 'axle', truck: id, axle: axleOf[axle]! } },
      numbers: { loadKg, limitKg: most },
      date: null,
    })),
  );
