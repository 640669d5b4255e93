import { hangName } from '#tour-file';
import type { HardwareFinding } from '#trade';
import type { CartsResult, HangResult } from '../contract/index.js';
import { type PlanInputs, framesOf, modelOf } from '../inputs/index.js';
import { metalFactors, ratedKg } from '../rules/index.js';

/**
 * The rated load of each frame that hangs against what hangs below it, static, with the heaviest base of a cart that hangs there before it is taken off,
 * reduced by the regime as other metal is. What is below a plate at the grid is the whole hang.
 */
export function frameLoads(inputs: PlanInputs, carts: CartsResult, hangs: readonly HangResult[]): HardwareFinding[] {
  return inputs.hangs.flatMap((hang) => {
    const result = hangs.find((each) => each.hang === hang.id);
    if (!result) return [];
    const baseKg = heaviestBaseKg(inputs, carts, hang.id);
    const most = new Map<string, number>();
    for (const { model, position } of framesOf(inputs, hang)) {
      const below = position === null ? result.massKg : (result.boxes.find((each) => each.position === position)?.hangsBelowKg ?? 0);
      most.set(model.model, Math.max(most.get(model.model) ?? 0, below + baseKg));
    }
    return [...most].flatMap(([name, carriesKg]) => compared(inputs, { kind: 'hang', id: hang.id, name: hangName(hang) }, name, carriesKg));
  });
}

function compared(
  inputs: PlanInputs,
  hang: { readonly kind: 'hang'; readonly id: string; readonly name: string },
  name: string,
  carriesKg: number,
): HardwareFinding[] {
  const { ratedLoad } = modelOf(inputs.file.catalogue.frames, name);
  const subjects = { hang, model: { kind: 'model' as const, id: name } };
  if (!ratedLoad) return [{ code: 'frame-without-rated-value', subjects, numbers: { carriesKg }, date: null }];
  const share = metalFactors(inputs).reduce((product, each) => product * each.factor, 1);
  const limitKg = ratedKg(ratedLoad) * share;
  return carriesKg <= limitKg + 1e-9
    ? []
    : [{ code: 'frame-over-rated', subjects, numbers: { carriesKg, limitKg, ratedKg: ratedKg(ratedLoad), share }, date: null }];
}

const heaviestBaseKg = ({ file: { catalogue } }: PlanInputs, { loads }: CartsResult, hang: string): number =>
  Math.max(
    0,
    ...loads
      .filter((each) => each.hang === hang)
      .flatMap(({ cartModel }) => (cartModel === null ? catalogue.carts : [modelOf(catalogue.carts, cartModel)]))
      .map((each) => each.baseMassKg ?? each.massKg),
  );
