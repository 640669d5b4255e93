import type { Hang } from '#tour-file';
import { NumberField } from '../../../ui/form.js';
import type { OfHang } from './of-hang.js';
import { clean } from './change-hang.js';
import { ModelList } from './model-list.js';
import { StructureFields } from './structure-fields.js';

const figures = [
  ['position', 'At box (0: the grid)'],
  ['behindMm', 'Behind its front pivot, mm'],
  ['belowMm', 'Below it, mm'],
  ['anchorForwardMm', 'Anchor forward of the grid (behind: negative), mm'],
  ['anchorBelowMm', 'Anchor below the grid, mm'],
  ['chainMm', 'Chain above the grid at trim, mm'],
] as const;

/** A line that draws the hang to an anchor: with one pick it makes the tilt, with two its tension is wanted. */
export function PullBackFields({ at, hang, kit, onChange }: OfHang) {
  const { pullBack } = hang;
  if (!pullBack) return null;
  const last =
    hang.picks.length === 1
      ? (['tiltDownDeg', 'Wanted tilt, degrees nose down'] as const)
      : (['tensionN', 'Tension of the line, N'] as const);
  const list = (part: 'shackles' | 'slings', label: string) => (
    <ModelList
      label={label}
      models={pullBack[part]}
      names={kit.names[part] ?? []}
      onChange={(models) => onChange({ ...hang, pullBack: { ...pullBack, [part]: models } })}
    />
  );
  return (
    <div className="fields">
      {[...figures, last].map(([part, label]) => (
        <NumberField key={part} name={`${at}.pullBack.${part}`} label={label} />
      ))}
      <StructureFields
        name={`${at}.pullBack`}
        allowed={pullBack.structure}
        label="Anchor may be pulled with"
        onChange={(structure) => onChange({ ...hang, pullBack: clean({ ...pullBack, structure }) })}
      />
      {list('slings', 'Slings of the line')}
      {list('shackles', 'Shackles of the line')}
    </div>
  );
}

export const newPullBack = (hang: Hang): NonNullable<Hang['pullBack']> => ({
  position: hang.boxes.length,
  behindMm: 500,
  belowMm: 150,
  anchorForwardMm: -6000,
  anchorBelowMm: 8000,
  ...(hang.picks.length === 1 ? { tiltDownDeg: 0 } : { tensionN: 500 }),
  shackles: [],
  slings: [],
});
