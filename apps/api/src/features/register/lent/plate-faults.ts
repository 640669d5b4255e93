import type { BadInput } from '#kernel';
import { ratedKg } from '#pack-plan';
import type { Catalogue, RatedLoad } from '#tour-file';

/** What is read off a plate. */
interface Plate {
  readonly kind: string;
  readonly model: string;
  readonly ratedLoad?: string | null;
  readonly massKg?: number | null;
}

const written = /^(\d+(?:\.\d+)?) *(kg|t|short ton|lb|kN)$/;

/** What rounding in another unit may make of one figure: 2205 lb of 1 t. */
const roundedShare = 0.001;

/** Whether a plate in its own unit says the rated load on file: 2.5 t is 2500 kg. */
const isSame = (plate: RatedLoad, onFile: RatedLoad): boolean =>
  plate.unit === onFile.unit
    ? plate.value === onFile.value
    : Math.abs(ratedKg(plate) - ratedKg(onFile)) <= roundedShare * Math.min(ratedKg(plate), ratedKg(onFile));

/** Plans are made with the figures of the model: a plate that says otherwise is of another model. */
export function plateFaults({ kind, model, ratedLoad, massKg }: Plate, catalogue: Catalogue): BadInput[] {
  const models = Object.entries(catalogue).find(([name]) => name === (kind === 'box' ? 'boxes' : `${kind}s`))?.[1];
  const known = models?.find((each) => each.model === model) as { massKg?: number; ratedLoad?: RatedLoad } | undefined;
  if (!known)
    return [
      { field: 'model', value: model.slice(0, 80), wanted: `a model of a ${kind.slice(0, 20)} on file; put it into the catalogue first` },
    ];
  const faults: BadInput[] = [];
  const text = ratedLoad?.trim() ?? '';
  const [, value, unit] = written.exec(text) ?? [];
  if (text !== '' && value === undefined)
    faults.push({ field: 'ratedLoad', value: text.slice(0, 80), wanted: 'value and unit (kg, t, short ton, lb, kN): 2 t' });
  else if (text !== '' && known.ratedLoad && !isSame({ value: Number(value), unit: unit as RatedLoad['unit'] }, known.ratedLoad))
    faults.push({
      field: 'ratedLoad',
      value: text,
      wanted: `${known.ratedLoad.value} ${known.ratedLoad.unit}, as ${model} on file; or another model`,
    });
  if (massKg && known.massKg !== undefined && massKg !== known.massKg)
    faults.push({ field: 'massKg', value: massKg, wanted: `${known.massKg}, as ${model} on file; or another model` });
  return faults;
}
