import type { Hang } from '#tour-file';
import { TextField } from '../../../ui/form.js';
import { clean } from './change-hang.js';
import type { OfHang } from './of-hang.js';

type Pick = Hang['picks'][number];

/** What the rigger of the house asks of a pick beside its load: the beam, where the body of the hoist is, who brings the kit. */
export function SiteFields({ at, hang, index, onChange }: OfHang & { readonly index: number }) {
  const pick = hang.picks[index];
  if (!pick) return null;
  const name = `${at}.picks.${index}`;
  const set = (next: Partial<Pick>) =>
    onChange({ ...hang, picks: hang.picks.map((each, other) => (other === index ? clean({ ...each, ...next }) : each)) });
  return (
    <div className="fields">
      <TextField name={`${name}.beam`} label="Truss or beam, as the show names it" />
      <label>
        Body of the hoist
        <select
          value={pick.hoistBody ?? ''}
          onChange={(event) => set({ hoistBody: event.target.value === '' ? undefined : (event.target.value as Pick['hoistBody']) })}
        >
          <option value="">not said</option>
          <option value="at the point">at the point: its hook goes up and down</option>
          <option value="at the grid">at the grid: it climbs its chain</option>
        </select>
      </label>
      <label>
        Hoist and steel
        <select
          value={pick.kitBy ?? ''}
          onChange={(event) => set({ kitBy: event.target.value === '' ? undefined : (event.target.value as Pick['kitBy']) })}
        >
          <option value="">of this kit</option>
          <option value="rigging contractor">brought by the rigging contractor</option>
          <option value="venue">of the venue</option>
        </select>
      </label>
    </div>
  );
}
