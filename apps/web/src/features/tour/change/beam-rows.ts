import { z } from 'zod';
import type { Show } from '#tour-file';
import { figureOrNothing, filled } from '../../../ui/typed.js';

type Beam = NonNullable<Show['beams']>[number];

const height = figureOrNothing('a height in millimetres, or nothing', { over: 0, under: 100_000 });

/** A truss or beam as it is typed; a load in another unit than kilonewtons stays as it is filed while nobody changes it. */
const typedBeam = z.object({
  name: filled('a name'),
  highSteelMm: height,
  lowSteelMm: height,
  allowedKn: figureOrNothing('a load in kilonewtons, or nothing', { over: 0, under: 10_000_000 }),
  allowedBy: z.string().trim(),
});

export const typedBeams = z.array(typedBeam).max(50);

const text = (value: number | undefined): string => (value === undefined ? '' : String(value));

export const beamRows = (beams: Show['beams'] = []): z.input<typeof typedBeams> =>
  beams.map(({ name, highSteelMm, lowSteelMm, allowed, allowedBy = '' }) => ({
    name,
    highSteelMm: text(highSteelMm),
    lowSteelMm: text(lowSteelMm),
    allowedKn: allowed?.unit === 'kN' ? text(allowed.value) : '',
    allowedBy,
  }));

/** What is filed; of a beam whose load is filed in another unit and was left empty that load is kept. */
export const beamsOf = (rows: z.output<typeof typedBeams>, before: Show['beams'] = []): readonly Beam[] =>
  rows.map(({ name, highSteelMm, lowSteelMm, allowedKn, allowedBy }) => {
    const allowed = allowedOf(allowedKn, before.find((each) => each.name === name)?.allowed);
    return {
      name,
      ...(highSteelMm === undefined ? {} : { highSteelMm }),
      ...(lowSteelMm === undefined ? {} : { lowSteelMm }),
      ...(allowed ? { allowed } : {}),
      ...(allowedBy === '' ? {} : { allowedBy }),
    };
  });

/** The same figure keeps the source that it was filed with; another has none. */
function allowedOf(typedKn: number | undefined, filed: Beam['allowed']): Beam['allowed'] {
  if (typedKn === undefined) return filed?.unit === 'kN' ? undefined : filed;
  return filed?.unit === 'kN' && filed.value === typedKn ? filed : { value: typedKn, unit: 'kN' };
}
