import type { ReactNode } from 'react';
import { NumberField } from '../../../ui/form.js';
import { clean } from './change-hang.js';
import type { OfHang } from './of-hang.js';
import { ModelList } from './model-list.js';
import { PickFields } from './pick-fields.js';
import { PullBackFields, newPullBack } from './pull-back-fields.js';

/** What lifts a hang: each pick with its steel, point and bridle; tilts; pull-back; secondary suspension. */
export function RiggingForm(of: OfHang) {
  const { hang, kit, onChange } = of;
  const { pullBack, secondary } = hang;
  return (
    <>
      {hang.picks.map((_, index) => (
        <PickFields key={index} {...of} index={index} />
      ))}
      <TiltFields {...of} />
      <ModelList
        label="Tilt plates and adapters at the grid"
        models={hang.frames ?? []}
        names={kit.names.frames ?? []}
        onChange={(frames) => onChange(clean({ ...hang, frames: frames.length > 0 ? frames : undefined }))}
      />
      <Optional
        title="Secondary suspension"
        on={secondary !== undefined}
        onToggle={(on) => onChange(clean({ ...hang, secondary: on ? { shackles: [], slings: [] } : undefined }))}
      >
        <SecondaryFields {...of} />
      </Optional>
      <Optional
        title="Pull-back to an anchor"
        on={pullBack !== undefined}
        onToggle={(on) => onChange(clean({ ...hang, pullBack: on ? newPullBack(hang) : undefined }))}
      >
        <PullBackFields {...of} />
      </Optional>
    </>
  );
}

/** Tilts on the way up and on the day. */
function TiltFields({ at, hang, onChange }: OfHang) {
  const { tiltNeeds } = hang;
  return (
    <div className="fields">
      {hang.picks.length >= 2 && (
        <NumberField name={`${at}.liftTiltDownDeg`} label="Tilt while boxes are added, degrees (level where empty)" />
      )}
      {hang.picks.length === 2 &&
        (tiltNeeds ? (
          <>
            <NumberField name={`${at}.tiltNeeds.fromDeg`} label="The aim may ask for a tilt from, degrees" />
            <NumberField name={`${at}.tiltNeeds.toDeg`} label="to, degrees" />
            <button type="button" className="plain small" onClick={() => onChange(clean({ ...hang, tiltNeeds: undefined }))}>
              The aim asks for one tilt only
            </button>
          </>
        ) : (
          <button
            type="button"
            className="plain small"
            onClick={() => onChange({ ...hang, tiltNeeds: { fromDeg: hang.tiltDownDeg ?? 0, toDeg: hang.tiltDownDeg ?? 0 } })}
          >
            The aim may ask for other tilts
          </button>
        ))}
    </div>
  );
}

function SecondaryFields({ hang, kit, onChange }: OfHang) {
  const { secondary } = hang;
  if (!secondary) return null;
  const list = (part: 'shackles' | 'slings', label: string) => (
    <ModelList
      label={label}
      models={secondary[part]}
      names={kit.names[part] ?? []}
      onChange={(models) => onChange({ ...hang, secondary: { ...secondary, [part]: models } })}
    />
  );
  return (
    <div className="fields">
      {list('shackles', 'Shackles')}
      {list('slings', 'Slings')}
    </div>
  );
}

interface OptionalProps {
  readonly title: string;
  readonly on: boolean;
  readonly onToggle: (on: boolean) => void;
  readonly children: ReactNode;
}

/** A part that a hang has or has not. */
function Optional({ title, on, onToggle, children }: OptionalProps) {
  return (
    <fieldset>
      <legend>
        <label className="row">
          <input type="checkbox" className="tick" checked={on} onChange={(event) => onToggle(event.target.checked)} />
          {title}
        </label>
      </legend>
      {on && children}
    </fieldset>
  );
}
