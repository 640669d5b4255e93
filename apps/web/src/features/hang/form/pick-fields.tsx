import type { Hang } from '#tour-file';
import { Choice, FieldError, NumberField, TextField } from '../../../ui/form.js';
import { clean } from './change-hang.js';
import type { OfHang } from './of-hang.js';
import { ModelList } from './model-list.js';
import { SiteFields } from './site-fields.js';

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
        <StructureField {...of} pick={pick} />
      </div>
      <SiteFields {...of} />
      <BridleFields {...of} pick={pick} />
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

/** What the structure may carry there: known, or not on file. */
function StructureField(of: OfPick & { readonly pick: Pick }) {
  const set = changer(of);
  const name = `${of.at}.picks.${of.index}.structure`;
  return of.pick.structure ? (
    <div>
      <NumberField name={`${name}.value`} label="Structure may carry there" unit={of.pick.structure.unit} />
      <FieldError name={name} />
      <button type="button" className="plain small" onClick={() => set({ structure: undefined })}>
        Not on file
      </button>
    </div>
  ) : (
    <button type="button" className="plain small" onClick={() => set({ structure: { value: undefined as unknown as number, unit: 'kN' } })}>
      Enter what the structure may carry there
    </button>
  );
}

const legWords = { xMm: 'to the audience', yMm: 'along y', aboveMm: 'above the hook' } as const;

function BridleFields(of: OfPick & { readonly pick: Pick }) {
  const { bridle } = of.pick;
  const { kit } = of;
  const set = changer(of);
  const list = (part: 'shackles' | 'slings', label: string) =>
    bridle && (
      <ModelList
        label={label}
        models={bridle[part]}
        names={kit.names[part] ?? []}
        onChange={(models) => set({ bridle: { ...bridle, [part]: models } })}
      />
    );
  return (
    <>
      <label>
        Legs of a bridle above the hoist
        <select value={bridle?.legs.length ?? 0} onChange={(event) => set({ bridle: withLegs(bridle, Number(event.target.value)) })}>
          <option value={0}>none: the point is above the pick</option>
          <option value={2}>two</option>
          <option value={3}>three</option>
        </select>
      </label>
      {bridle && (
        <div className="fields">
          {bridle.legs.flatMap((_, leg) =>
            (['xMm', 'yMm', 'aboveMm'] as const).map((part) => (
              <NumberField
                key={`${leg} ${part}`}
                name={`${of.at}.picks.${of.index}.bridle.legs.${leg}.${part}`}
                label={`Leg ${leg + 1}: anchor ${legWords[part]}`}
                unit="mm"
              />
            )),
          )}
          {list('slings', 'Slings of a leg')}
          {list('shackles', 'Shackles of a leg')}
        </div>
      )}
    </>
  );
}

/** Legs that are there stay; new ones stand apart on both sides. */
function withLegs(bridle: Pick['bridle'], count: number): Pick['bridle'] {
  if (count === 0) return undefined;
  const legs = Array.from({ length: count }, (_, leg) => bridle?.legs[leg] ?? { xMm: 0, yMm: leg % 2 === 0 ? -1500 : 1500, aboveMm: 2000 });
  return { shackles: bridle?.shackles ?? [], slings: bridle?.slings ?? [], legs };
}
