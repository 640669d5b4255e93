/** One truck in rows, as people build them: towers, kinds of towers, rows chosen over the width, a beam from nose to door, then order and sides. */
export { type BuiltLane, placedTower } from './built-row.js';
export { type LengthCauses, rowsInTruck, type RowTask, towersOf, type TruckRows } from './one-truck-rows.js';
export { type RowKind, rowKinds } from './row-kinds.js';
export { chooseSides } from './row-sides.js';
export { type Tower } from './towers.js';
