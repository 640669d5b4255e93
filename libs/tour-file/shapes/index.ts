/** What a tour file holds: models, rules, items, the tour with its shows and hangs; each field with its form and unit. */
export { adapterBetween } from './adapter-between.js';
export type { AxlePlace, BoxModel, CartModel, CaseModel, Catalogue, GridModel, PinUse, RatedLoad, TruckModel } from './catalogue.js';
export { catalogue } from './catalogue.js';
export { holdsFor } from './holds-for.js';
export type { Examination, ExaminationRule, Item, ItemKind, ItemState } from './item.js';
export { examination, item, itemKinds, itemStates } from './item.js';
export type { LoadRule } from './load-rule.js';
export { loadRule } from './load-rule.js';
export type { KeptPiece, LoadingAct } from './loading.js';
export { afterAct, isLoadingEmpty, noLoading } from './loading.js';
export type { AdapterFrame, RiggingSystem, RunningStep } from './rigging-system.js';
export { riggingSystem } from './rigging-system.js';
export { shiftDates } from './shift-dates.js';
export type { Kit, TourFile } from './tour-file.js';
export { tourFileSchema } from './tour-file.js';
export type { Booking, Hang, HangBox, Pick, Show, SpareSetting, Tour } from './tour.js';
export { hang, tour } from './tour.js';
export { wholeHangs } from './whole-hang.js';
