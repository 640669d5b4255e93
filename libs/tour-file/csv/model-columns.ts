import { type Catalogue, catalogue } from '../shapes/index.js';
import { type CellForm, type CellFormName, cellForms } from './cell-forms.js';

export type ModelKind = keyof Catalogue;
export const modelKinds = Object.keys(catalogue.shape) as ModelKind[];

/** A column of a kind of model: heading in plain words with its unit, where the value lies in the model, and its form. */
export interface ModelColumn {
  readonly heading: string;
  readonly path: readonly string[];
  readonly form: CellForm;
}

type Row = readonly [heading: string, path: string, form?: CellFormName];

const size: readonly Row[] = [
  ['length mm', 'lengthMm', 'number'],
  ['width mm', 'widthMm', 'number'],
];
const packing: readonly Row[] = [
  ['may turn', 'mayTurn', 'yes or no'],
  ['floor only', 'floorOnly', 'yes or no'],
  ['most on top kg', 'maxOnTopKg', 'number'],
];
const rigging: readonly Row[] = [
  ['maker', 'maker'],
  ['rigging system', 'system'],
  ['mass kg', 'massKg', 'number'],
];
const steel: readonly Row[] = [
  ['maker', 'maker'],
  ['mass kg', 'massKg', 'number'],
  ['rated load', 'ratedLoad', 'rated load'],
];

const cost: Row = ['cost each', 'costEach', 'number'];

const rows: Record<ModelKind, readonly Row[]> = {
  boxes: [
    ...rigging,
    ['front height mm', 'frontHeightMm', 'number'],
    ['rear height mm', 'rearHeightMm', 'number'],
    ['depth mm', 'depthMm', 'number'],
    ['width mm', 'widthMm', 'number'],
    ['centre of gravity behind mm', 'cgBehindMm', 'number'],
    ['centre of gravity below mm', 'cgBelowMm', 'number'],
    ['rear lever mm', 'rearLeverMm', 'number'],
    ['splays deg', 'splaysDeg', 'numbers'],
    ['pins', 'pins', 'pins'],
    ['may share a cart with', 'mayShareCartWith', 'names'],
    ['rated rear link N', 'ratedRearLinkN', 'number'],
    ['rated front pin N', 'ratedFrontPinN', 'number'],
    ['source of the ratings', 'ratedSource'],
  ],
  grids: [
    ...rigging,
    ['centre of gravity behind mm', 'cgBehindMm', 'number'],
    ['centre of gravity above mm', 'cgAboveMm', 'number'],
    ['holes', 'holes', 'holes'],
    ['splays deg', 'splaysDeg', 'numbers'],
    ['pins', 'pins', 'pins'],
    ['rated load of a pick', 'ratedPick', 'rated load'],
    ...size,
    ['height mm', 'heightMm', 'number'],
  ],
  hoists: [
    ...steel,
    ['hoist class', 'hoistClass'],
    ['rated for (maker, class, use case)', 'ratedFor'],
    ['use case it is rated for', 'ratedForUseCase'],
    ['chain kg per m', 'chainKgPerM', 'number'],
    ['chain length m', 'chainLengthM', 'number'],
    ['body mm', 'bodyMm', 'number'],
    ['both hooks mm', 'hooksMm', 'number'],
    ['motor cable', 'motorCable'],
    ['chain bag', 'chainBag'],
    ['load cell', 'cell'],
    ['controller', 'controller'],
    cost,
  ],
  shackles: [...steel, ['size', 'size'], ['inside length mm', 'insideMm', 'number'], cost],
  slings: [...steel, ['length mm', 'lengthMm', 'number'], ['shortest mm', 'shortestMm', 'number'], ['material', 'material'], cost],
  pins: [['maker', 'maker'], ['size', 'size'], ['mass kg', 'massKg', 'number'], cost],
  looms: [['length mm', 'lengthMm', 'number'], ['mass kg', 'massKg', 'number'], cost],
  carts: [
    ['boxes at most', 'capacity', 'number'],
    ['carries only', 'carries', 'names'],
    ['mass kg', 'massKg', 'number'],
    ['base alone kg', 'baseMassKg', 'number'],
    ...size,
    ['heights mm', 'heightsMm', 'numbers'],
    ...packing,
    ['poles', 'poles', 'number'],
    ['lids', 'lids', 'number'],
    ['base pins', 'basePins', 'count and pin'],
  ],
  cases: [['mass kg', 'massKg', 'number'], ...size, ['height mm', 'heightMm', 'number'], ...packing, ['purpose', 'purpose']],
  trucks: [
    ['kind', 'kind'],
    ['inner length mm', 'innerLengthMm', 'number'],
    ['inner width mm', 'innerWidthMm', 'number'],
    ['inner height mm', 'innerHeightMm', 'number'],
    ['door height mm', 'doorHeightMm', 'number'],
    ['payload kg', 'payloadKg', 'number'],
    ['most gross kg', 'maxGrossKg', 'number'],
    ['most side offset mm', 'maxSideOffsetMm', 'number'],
    ['most end offset mm', 'maxEndOffsetMm', 'number'],
    ['most kg per metre', 'maxKgPerMetre', 'number'],
    ['blocked places', 'blocked', 'blocked places'],
    ['kingpin x mm', 'semiTrailer.kingpinXMm', 'number'],
    ['axle group x mm', 'semiTrailer.axleGroupXMm', 'number'],
    ['tare kingpin kg', 'semiTrailer.tareKingpinKg', 'number'],
    ['tare axle group kg', 'semiTrailer.tareAxleGroupKg', 'number'],
    ['most kingpin kg', 'semiTrailer.maxKingpinKg', 'number'],
    ['most axle group kg', 'semiTrailer.maxAxleGroupKg', 'number'],
    ['tractor wheelbase mm', 'semiTrailer.tractor.wheelbaseMm', 'number'],
    ['kingpin ahead of drive axle mm', 'semiTrailer.tractor.kingpinAheadOfDriveMm', 'number'],
    ['tare steer axle kg', 'semiTrailer.tractor.tareSteerKg', 'number'],
    ['tare drive axle kg', 'semiTrailer.tractor.tareDriveKg', 'number'],
    ['most steer axle kg', 'semiTrailer.tractor.maxSteerKg', 'number'],
    ['most drive axle kg', 'semiTrailer.tractor.maxDriveKg', 'number'],
    ['least drive share of gross', 'semiTrailer.tractor.minDriveShareOfGross', 'number'],
    ['front axle x mm', 'rigid.frontAxleXMm', 'number'],
    ['rear axle x mm', 'rigid.rearAxleXMm', 'number'],
    ['tare front axle kg', 'rigid.tareFrontKg', 'number'],
    ['tare rear axle kg', 'rigid.tareRearKg', 'number'],
    ['most front axle kg', 'rigid.maxFrontKg', 'number'],
    ['most rear axle kg', 'rigid.maxRearKg', 'number'],
    ['least front share of gross', 'rigid.minFrontShareOfGross', 'number'],
    ['axles', 'axles', 'axle places'],
  ],
  frames: [
    ...rigging,
    ['pins', 'pins', 'pins'],
    ['rated load', 'ratedLoad', 'rated load'],
    ['height on the cart mm', 'onCartMm', 'number'],
    cost,
  ],
  cells: [...steel, ['inside length mm', 'insideMm', 'number'], cost],
  controls: [
    ['maker', 'maker'],
    ['part (controller, motor cable, control cable, handset, emergency stop)', 'part'],
    ['mass kg', 'massKg', 'number'],
    ['length mm', 'lengthMm', 'number'],
    ['runs hoists', 'hoists', 'number'],
    ['with each controller', 'with', 'counts and models'],
    cost,
  ],
  aids: [
    ['maker', 'maker'],
    ['part (chain bag, tag line)', 'part'],
    ['mass kg', 'massKg', 'number'],
    ['length mm', 'lengthMm', 'number'],
    cost,
  ],
};

/** The columns of a kind of model, its name first. */
export const modelColumns = (kind: ModelKind): readonly ModelColumn[] =>
  ([['model', 'model'], ...rows[kind]] as readonly Row[]).map(([heading, path, form = 'text']) => ({
    heading,
    path: path.split('.'),
    form: cellForms[form],
  }));

/** The cell of a model in a column; empty where the model says nothing there. */
export function modelCell(model: object, column: ModelColumn): string {
  const value = column.path.reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], model);
  return value === undefined ? '' : column.form.write(value as never);
}
