import type { HangResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';

/** What a hang exceeds of the limits of its rigging system: most boxes, most mass. */
export function systemMass(inputs: PlanInputs, hang: HangResult): string[] {
  const system = inputs.file.systems.find((each) => each.id === hang.system);
  const sentences: string[] = [];
  if (system?.mostBoxes !== undefined && hang.boxes.length > system.mostBoxes)
    sentences.push(`${hang.hang} has ${hang.boxes.length} boxes; the rigging system allows ${system.mostBoxes}.`);
  if (system?.mostMassKg !== undefined && hang.massKg > system.mostMassKg)
    sentences.push(`${hang.hang} weighs ${Math.round(hang.massKg)} kg; the rigging system allows ${system.mostMassKg} kg.`);
  return sentences;
}
