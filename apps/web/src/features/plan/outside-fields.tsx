/** Somebody from outside, as it is typed. */
export interface OutsideTyped {
  readonly name: string;
  readonly company: string;
  readonly role: string;
  readonly place: string;
}

export const nobodyOutside: OutsideTyped = { name: '', company: '', role: '', place: '' };
export const isWhole = (of: OutsideTyped): boolean => [of.name, of.company, of.role, of.place].every((each) => each.trim() !== '');

const labels = [
  ['name', 'Name of who signs from outside'],
  ['company', 'Company'],
  ['role', 'What they are there, such as rigger of the venue'],
  ['place', 'Where they stood, such as the grid'],
] as const;

/** Name, company, role and where, of somebody from outside who signs on this device. */
export function OutsideFields({ of, onChange }: { of: OutsideTyped; onChange: (next: OutsideTyped) => void }) {
  return labels.map(([key, label]) => (
    <label key={key}>
      {label}
      <input value={of[key]} maxLength={80} onChange={(event) => onChange({ ...of, [key]: event.target.value })} />
    </label>
  ));
}
