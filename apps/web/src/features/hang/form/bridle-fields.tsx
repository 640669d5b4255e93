import type { BridleSetting } from '#tour-file';
import { NumberField } from '../../../ui/form.js';
import { clean } from './change-hang.js';
import { ModelList } from './model-list.js';
import type { Kit } from './kit.js';
import { StructureFields } from './structure-fields.js';

type Leg = BridleSetting['legs'][number];

interface OfBridle {
  /** The bridle in the form. */
  readonly name: string;
  readonly bridle: BridleSetting | undefined;
  readonly kit: Kit;
  readonly onChange: (bridle: BridleSetting | undefined) => void;
}

const legWords = { xMm: 'to the audience', yMm: 'along y', aboveMm: 'above the hook' } as const;

/** Legs above a hoist whose point is not above its pick: their anchors, what each anchor is allowed, and the steel of all legs or of one. */
export function BridleFields(of: OfBridle) {
  const { bridle, kit, onChange } = of;
  const list = (part: 'shackles' | 'slings', label: string) =>
    bridle && (
      <ModelList
        label={label}
        models={bridle[part]}
        names={kit.names[part] ?? []}
        onChange={(models) => onChange({ ...bridle, [part]: models })}
      />
    );
  return (
    <>
      <label>
        Legs of a bridle above the hoist
        <select value={bridle?.legs.length ?? 0} onChange={(event) => onChange(withLegs(bridle, Number(event.target.value)))}>
          <option value={0}>none: the point is above the pick</option>
          <option value={2}>two</option>
          <option value={3}>three</option>
        </select>
      </label>
      {bridle && (
        <>
          <div className="fields">
            {list('slings', 'Slings of a leg')}
            {list('shackles', 'Shackles of a leg')}
          </div>
          {bridle.legs.map((leg, index) => (
            <LegFields
              key={index}
              {...of}
              name={`${of.name}.legs.${index}`}
              number={index + 1}
              leg={leg}
              steel={bridle}
              onLeg={(next) => onChange({ ...bridle, legs: bridle.legs.map((each, other) => (other === index ? clean(next) : each)) })}
            />
          ))}
        </>
      )}
    </>
  );
}

interface OfLeg {
  readonly name: string;
  readonly number: number;
  readonly leg: Leg;
  readonly kit: Kit;
  /** What every leg has that names none of its own. */
  readonly steel: Pick<BridleSetting, 'shackles' | 'slings'>;
  readonly onLeg: (leg: Leg) => void;
}

function LegFields({ name, number, leg, kit, steel, onLeg }: OfLeg) {
  const own = leg.shackles !== undefined || leg.slings !== undefined;
  const list = (part: 'shackles' | 'slings', label: string) => (
    <ModelList
      label={`Leg ${number}: ${label}`}
      models={leg[part] ?? steel[part]}
      names={kit.names[part] ?? []}
      onChange={(models) => onLeg({ ...leg, [part]: models })}
    />
  );
  return (
    <div className="fields">
      {(['xMm', 'yMm', 'aboveMm'] as const).map((part) => (
        <NumberField key={part} name={`${name}.${part}`} label={`Leg ${number}: anchor ${legWords[part]}`} unit="mm" />
      ))}
      <StructureFields
        name={name}
        allowed={leg.structure}
        label={`Leg ${number}: structure may carry there`}
        onChange={(structure) => onLeg({ ...leg, structure })}
      />
      {own && list('slings', 'slings of its own')}
      {own && list('shackles', 'shackles of its own')}
      {own ? (
        <button type="button" className="plain small" onClick={() => onLeg({ ...leg, shackles: undefined, slings: undefined })}>
          Leg {number} has the steel of the others
        </button>
      ) : (
        <button type="button" className="plain small" onClick={() => onLeg({ ...leg, shackles: steel.shackles, slings: steel.slings })}>
          Leg {number} has steel of its own
        </button>
      )}
    </div>
  );
}

/** Legs that are there stay; new ones stand apart on both sides. */
function withLegs(bridle: BridleSetting | undefined, count: number): BridleSetting | undefined {
  if (count === 0) return undefined;
  const legs = Array.from({ length: count }, (_, leg) => bridle?.legs[leg] ?? { xMm: 0, yMm: leg % 2 === 0 ? -1500 : 1500, aboveMm: 2000 });
  return { shackles: bridle?.shackles ?? [], slings: bridle?.slings ?? [], legs };
}
