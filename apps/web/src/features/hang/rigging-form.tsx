import type { GridModel, Hang } from '#tour-file';
import { ModelList } from './model-list.js';

interface Props {
  readonly hang: Hang;
  readonly grid: GridModel | undefined;
  readonly names: Record<string, readonly string[]>;
  readonly onChange: (hang: Hang) => void;
}

type Pick = Hang['picks'][number];

/** What lifts a hang: each pick with its steel, point and bridle; tilts; pull-back; secondary suspension. */
export function RiggingForm({ hang, grid, names, onChange }: Props) {
  const set = (index: number, next: Partial<Pick>) =>
    onChange({ ...hang, picks: hang.picks.map((each, at) => (at === index ? clean({ ...each, ...next }) : each)) });
  const { pullBack, secondary, tiltNeeds } = hang;
  return (
    <>
      {hang.picks.map((pick, index) => (
        <fieldset key={index}>
          <legend>Pick {index + 1}</legend>
          <div className="fields">
            <Choice
              label="Hole"
              value={pick.hole}
              choices={(grid?.holes ?? []).map((each) => each.hole)}
              onChange={(hole) => set(index, { hole })}
            />
            <Choice label="Hoist" value={pick.hoist} choices={names.hoists ?? []} onChange={(hoist) => set(index, { hoist })} />
            <ModelList
              label="Shackles"
              models={pick.shackles}
              names={names.shackles ?? []}
              onChange={(shackles) => set(index, { shackles })}
            />
            <ModelList label="Slings" models={pick.slings} names={names.slings ?? []} onChange={(slings) => set(index, { slings })} />
            <label>
              Name of the point, where picks share one
              <input value={pick.point ?? ''} onChange={(event) => set(index, { point: event.target.value || undefined })} />
            </label>
            <Figure
              label="Structure may carry there, kN"
              value={pick.structure?.unit === 'kN' ? pick.structure.value : undefined}
              onChange={(value) => set(index, { structure: value === undefined ? undefined : { value, unit: 'kN' } })}
            />
          </div>
          <BridleForm pick={pick} names={names} onChange={(bridle) => set(index, { bridle })} />
        </fieldset>
      ))}
      <div className="fields">
        {hang.picks.length >= 2 && (
          <Figure
            label="Tilt while boxes are added, degrees (level where empty)"
            value={hang.liftTiltDownDeg}
            onChange={(liftTiltDownDeg) => onChange(clean({ ...hang, liftTiltDownDeg }))}
          />
        )}
        {hang.picks.length === 2 && (
          <>
            <Figure
              label="The aim may ask for a tilt from, degrees"
              value={tiltNeeds?.fromDeg}
              onChange={(fromDeg) =>
                onChange(clean({ ...hang, tiltNeeds: fromDeg === undefined ? undefined : { fromDeg, toDeg: tiltNeeds?.toDeg ?? fromDeg } }))
              }
            />
            <Figure
              label="to, degrees"
              value={tiltNeeds?.toDeg}
              onChange={(toDeg) =>
                onChange(clean({ ...hang, tiltNeeds: toDeg === undefined ? undefined : { fromDeg: tiltNeeds?.fromDeg ?? toDeg, toDeg } }))
              }
            />
          </>
        )}
      </div>
      <fieldset>
        <legend>
          <label>
            <input
              type="checkbox"
              checked={secondary !== undefined}
              onChange={(event) => onChange(clean({ ...hang, secondary: event.target.checked ? { shackles: [], slings: [] } : undefined }))}
            />{' '}
            Secondary suspension
          </label>
        </legend>
        {secondary && (
          <div className="fields">
            <ModelList
              label="Shackles"
              models={secondary.shackles}
              names={names.shackles ?? []}
              onChange={(shackles) => onChange({ ...hang, secondary: { ...secondary, shackles } })}
            />
            <ModelList
              label="Slings"
              models={secondary.slings}
              names={names.slings ?? []}
              onChange={(slings) => onChange({ ...hang, secondary: { ...secondary, slings } })}
            />
          </div>
        )}
      </fieldset>
      <fieldset>
        <legend>
          <label>
            <input
              type="checkbox"
              checked={pullBack !== undefined}
              onChange={(event) => onChange(clean({ ...hang, pullBack: event.target.checked ? newPullBack(hang) : undefined }))}
            />{' '}
            Pull-back to an anchor
          </label>
        </legend>
        {pullBack && (
          <div className="fields">
            {(
              [
                ['position', 'At box (0: the grid)'],
                ['behindMm', 'Behind its front pivot, mm'],
                ['belowMm', 'Below it, mm'],
                ['anchorForwardMm', 'Anchor forward of the grid (behind: negative), mm'],
                ['anchorBelowMm', 'Anchor below the grid, mm'],
                ['chainMm', 'Chain above the grid at trim, mm'],
                hang.picks.length === 1
                  ? (['tiltDownDeg', 'Wanted tilt, degrees nose down'] as const)
                  : (['tensionN', 'Tension of the line, N'] as const),
              ] as const
            ).map(([key, label]) => (
              <Figure
                key={key}
                label={label}
                value={pullBack[key]}
                onChange={(value) =>
                  onChange({ ...hang, pullBack: clean({ ...pullBack, [key]: key === 'chainMm' ? value : (value ?? 0) }) })
                }
              />
            ))}
            <ModelList
              label="Slings of the line"
              models={pullBack.slings}
              names={names.slings ?? []}
              onChange={(slings) => onChange({ ...hang, pullBack: { ...pullBack, slings } })}
            />
            <ModelList
              label="Shackles of the line"
              models={pullBack.shackles}
              names={names.shackles ?? []}
              onChange={(shackles) => onChange({ ...hang, pullBack: { ...pullBack, shackles } })}
            />
          </div>
        )}
      </fieldset>
    </>
  );
}

const newPullBack = (hang: Hang): NonNullable<Hang['pullBack']> => ({
  position: hang.boxes.length,
  behindMm: 500,
  belowMm: 150,
  anchorForwardMm: -6000,
  anchorBelowMm: 8000,
  ...(hang.picks.length === 1 ? { tiltDownDeg: 0 } : { tensionN: 500 }),
  shackles: [],
  slings: [],
});

function BridleForm({ pick, names, onChange }: { pick: Pick; names: Props['names']; onChange: (bridle: Pick['bridle']) => void }) {
  const { bridle } = pick;
  const leg = { xMm: 0, yMm: 0, aboveMm: 2000 };
  return (
    <>
      <label>
        Legs of a bridle above the hoist
        <select
          value={bridle?.legs.length ?? 0}
          onChange={(event) => {
            const count = Number(event.target.value);
            onChange(
              count === 0
                ? undefined
                : {
                    shackles: bridle?.shackles ?? [],
                    slings: bridle?.slings ?? [],
                    legs: Array.from(
                      { length: count },
                      (_, index) => bridle?.legs[index] ?? { ...leg, yMm: index % 2 === 0 ? -1500 : 1500 },
                    ),
                  },
            );
          }}
        >
          <option value={0}>none: the point is above the pick</option>
          <option value={2}>two</option>
          <option value={3}>three</option>
        </select>
      </label>
      {bridle && (
        <div className="fields">
          {bridle.legs.flatMap((each, index) =>
            (['xMm', 'yMm', 'aboveMm'] as const).map((key) => (
              <Figure
                key={`${index} ${key}`}
                label={`Leg ${index + 1}: anchor ${{ xMm: 'to the audience', yMm: 'along y', aboveMm: 'above the hook' }[key]}, mm`}
                value={each[key]}
                onChange={(value) =>
                  onChange({ ...bridle, legs: bridle.legs.map((old, at) => (at === index ? { ...old, [key]: value ?? 0 } : old)) })
                }
              />
            )),
          )}
          <ModelList
            label="Slings of a leg"
            models={bridle.slings}
            names={names.slings ?? []}
            onChange={(slings) => onChange({ ...bridle, slings })}
          />
          <ModelList
            label="Shackles of a leg"
            models={bridle.shackles}
            names={names.shackles ?? []}
            onChange={(shackles) => onChange({ ...bridle, shackles })}
          />
        </div>
      )}
    </>
  );
}

function Choice({
  label,
  value,
  choices,
  onChange,
}: {
  label: string;
  value: string;
  choices: readonly string[];
  onChange: (value: string) => void;
}) {
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        {choices.includes(value) ? null : <option>{value}</option>}
        {choices.map((each) => (
          <option key={each}>{each}</option>
        ))}
      </select>
    </label>
  );
}

/** A number that may be left out. */
function Figure({ label, value, onChange }: { label: string; value: number | undefined; onChange: (value: number | undefined) => void }) {
  return (
    <label>
      {label}
      <input
        type="number"
        step="any"
        value={value ?? ''}
        onChange={(event) => onChange(event.target.value === '' ? undefined : event.target.valueAsNumber)}
      />
    </label>
  );
}

/** Without the fields that say nothing, so that a saved tour is as short as it was. */
const clean = <T extends object>(value: T): T => Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined)) as T;
