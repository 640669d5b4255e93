import type { Hang, TrimTo } from '#tour-file';
import { Choice, FieldError, NumberField } from '../../../ui/form.js';
import { mirrored, named, withPicks } from './change-hang.js';
import type { OfHang } from './of-hang.js';

const trimMarks = [
  ['bottom edge', 'the bottom edge'],
  ['grid', 'the grid, at its front pivot'],
  ['top', 'the top of the grid'],
] as const;

const counts = [1, 2, 3, 4, 5, 6, 7, 8];
const countWord = (count: number): string => (count === 1 ? 'one' : count === 2 ? 'two' : `${count}, to be measured`);

/** Name, heights and grid of a hang, and whose mirror it is. */
export function HangFields({
  at,
  hang,
  kit,
  hangs,
  original,
  onChange,
}: OfHang & { readonly hangs: readonly Hang[]; readonly original: Hang | undefined }) {
  return (
    <div className="fields">
      <label>
        Name
        <input value={hang.name ?? hang.id} onChange={(event) => onChange(named(hang, event.target.value))} />
        <FieldError name={`${at}.name`} />
      </label>
      <label>
        Mirror of
        <select value={hang.mirrorOf ?? ''} onChange={(event) => onChange(mirrored(hang, event.target.value, original))}>
          <option value="">no other hang</option>
          {hangs
            .filter((each) => each !== hang && each.mirrorOf === undefined)
            .map((each, index) => (
              <option key={index} value={each.id}>
                {each.name ?? each.id}
              </option>
            ))}
        </select>
        <FieldError name={`${at}.mirrorOf`} />
      </label>
      <NumberField name={`${at}.goesUp`} label="Goes up (1 = first)" />
      <HeightFields at={at} hang={hang} kit={kit} original={original} onChange={onChange} />
      {!original && (
        <>
          <Choice name={`${at}.grid`} label="Grid" choices={kit.grids.map((each) => [each.model, each.model] as const)} />
          {hang.picks.length >= 2 && <NumberField name={`${at}.tiltDownDeg`} label="Tilt" unit="degrees nose down" />}
          <label>
            Picks
            <select value={hang.picks.length} onChange={(event) => onChange(withPicks(hang, Number(event.target.value), kit))}>
              {counts.map((count) => (
                <option key={count} value={count}>
                  {countWord(count)}
                </option>
              ))}
            </select>
            <FieldError name={`${at}.picks`} />
          </label>
        </>
      )}
    </div>
  );
}

/** Trim, what it measures to, points and deck. */
function HeightFields({ at, hang, original, onChange }: OfHang & { readonly original: Hang | undefined }) {
  return (
    <>
      <NumberField name={`${at}.trimHeightMm`} label="Trim height" unit="mm" />
      <label>
        Trim measures to
        <select
          value={hang.trimTo ?? original?.trimTo ?? 'grid'}
          onChange={(event) => onChange({ ...hang, trimTo: event.target.value as TrimTo })}
        >
          {trimMarks.map(([mark, word]) => (
            <option key={mark} value={mark}>
              {word}
            </option>
          ))}
        </select>
        <FieldError name={`${at}.trimTo`} />
      </label>
      <NumberField name={`${at}.deckHeightMm`} label="Deck below the hang" unit="mm above the floor" placeholder="the floor itself" />
      <NumberField name={`${at}.pointHeightMm`} label="Height of the points" unit="mm" placeholder="not on file" />
    </>
  );
}
