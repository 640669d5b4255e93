/** What a tour file holds: models, rules, items, the tour with its shows and hangs; each field with its form and unit. */
export { adapterBetween } from './adapter-between.js';
export type {
  AxlePlace,
  BoxModel,
  CartModel,
  CaseModel,
  Catalogue,
  FrameModel,
  GridModel,
  HoistModel,
  PinUse,
  RatedLoad,
  TruckModel,
} from './catalogue.js';
export { catalogue } from './catalogue.js';
export { hangName } from './hang-name.js';
export { holdsFor } from './holds-for.js';
export type { Defect, Examination } from './examination.js';
export { earliestDanger, examination } from './examination.js';
export type { ExaminationRule, Item, ItemKind, ItemState } from './item.js';
export { examinationRule, item, itemKinds, itemStates } from './item.js';
export { type Lent, lent, lenderKinds } from './lent.js';
export type { LoadRule, UseCase } from './load-rule.js';
export { loadRule } from './load-rule.js';
export type { KeptPiece, LoadingAct } from './loading.js';
export { afterAct, isLoadingEmpty, noLoading } from './loading.js';
export { legSteel } from './leg-steel.js';
export type { AdapterFrame, RiggingSystem, RunningStep } from './rigging-system.js';
export { closingOf, riggingSystem, splaySetAtPosition, stepMoments } from './rigging-system.js';
export { shiftDates } from './shift-dates.js';
export type { Kit, TourFile } from './tour-file.js';
export { tourFileSchema } from './tour-file.js';
export type {
  Booking,
  BridleSetting,
  Design,
  Hang,
  HangBox,
  Pick,
  PlaceAnswer,
  PullBackSetting,
  Show,
  SpareSetting,
  Tour,
  TrimTo,
} from './tour.js';
export { hang, tour } from './tour.js';
export type { Venue } from './venue.js';
export { venue } from './venue.js';
export { wholeHangs } from './whole-hang.js';
