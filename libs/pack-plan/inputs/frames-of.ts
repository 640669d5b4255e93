import { type FrameModel, type Hang, adapterBetween } from '#tour-file';
import { type PlanInputs, modelOf } from './plan-inputs.js';

/** Frames of a hang whose model is on file, from the grid down; those between boxes with the position of the box below. */
export function framesOf(
  { file: { catalogue, systems } }: PlanInputs,
  hang: Hang,
): { readonly model: FrameModel; readonly position: number | null; readonly where: string }[] {
  return [
    ...(hang.frames ?? []).map((name) => ({ model: modelOf(catalogue.frames, name), position: null, where: 'at the grid' })),
    ...hang.boxes.slice(1).flatMap((box, index) => {
      const name = adapterBetween(systems, hang.boxes[index]!.model, box.model)?.model;
      return name === undefined
        ? []
        : [{ model: modelOf(catalogue.frames, name), position: index + 2, where: `between boxes ${index + 1} and ${index + 2}` }];
    }),
  ];
}
