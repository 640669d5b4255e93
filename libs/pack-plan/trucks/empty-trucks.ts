import { groupDigits } from '#kernel';
import { overWhenEmpty } from '#truck-pack';
import { type Finding, say } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { axleNames } from './axle-sheet.js';

/** Trucks of the tour that are over an axle limit before anything is in them: the figures are wrong, or the truck may not go. */
export function emptyTruckFindings(inputs: PlanInputs): Finding[] {
  return inputs.file.tour.trucks.flatMap((id) =>
    overWhenEmpty(modelOf(inputs.file.catalogue.trucks, inputs.items.get(id)!.model)).map(({ axle, loadKg, most }) =>
      say(
        'truck',
        'stop',
        'over-when-empty',
        id,
        null,
        `${id} is over the limit of its ${axleNames[axle] ?? axle} when it is empty: ${groupDigits(loadKg)} kg of ${groupDigits(most)} kg. Check the tare and the levers on file.`,
      ),
    ),
  );
}
