import type { Hang } from '#tour-file';
import { Choice, TextField } from '../../../ui/form.js';
import { BridleFields } from './bridle-fields.js';
import { clean } from './change-hang.js';
import type { OfHang } from './of-hang.js';
import { ModelList } from './model-list.js';
import { SiteFields } from './site-fields.js';
import { StructureFields } from './structure-fields.js';

type Pick = Hang['picks'][number];
type OfPick = OfHang & { readonly index: number };

/** One pick with its steel, the point above it and its bridle. */
export function PickFields(of: OfPick) {
  const { at, hang, kit, index } = of;
  const pick = hang.picks[index];
  if (!pick) return null;
  const set = changer(of);
  const name = `${at}.picks.${index}`;
  const holes = kit.grids.find((each) => each.model === hang.grid)?.holes ?? [];
  return (
    <fieldset>
      <legend>Pick {index + 1}</legend>
      <div className="fields">
        <Choice
          name={`${name}.hole`}
          label="Hole"
          choices={withOwn(
            pick.hole,
            holes.map((each) => each.hole),
          )}
        />
        <Choice name={`${name}.hoist`} label="Hoist" choices={withOwn(pick.hoist, kit.names.hoists ?? [])} />
        <ModelList label="Shackles" models={pick.shackles} names={kit.names.shackles ?? []} onChange={(shackles) => set({ shackles })} />
        <ModelList label="Slings" models={pick.slings} names={kit.names.slings ?? []} onChange={(slings) => set({ slings })} />
        <TextField name={`${name}.point`} label="Name of the point, where picks share one" />
        <StructureFields
          name={name}
          allowed={pick.structure}
          label="Structure may carry there"
          onChange={(structure) => set({ structure })}
        />
      </div>
      <SiteFields {...of} />
      <BridleFields name={`${name}.bridle`} bridle={pick.bridle} kit={kit} onChange={(bridle) => set({ bridle })} />
    </fieldset>
  );
}

const changer =
  ({ hang, index, onChange }: OfPick) =>
  (next: Partial<Pick>) =>
    onChange({ ...hang, picks: hang.picks.map((each, other) => (other === index ? clean({ ...each, ...next }) : each)) });

/** The one that is on file is always among those to choose from, also where the grid has it no more. */
const withOwn = (own: string, known: readonly string[]) =>
  (known.includes(own) ? known : [own, ...known]).map((each) => [each, each] as const);
