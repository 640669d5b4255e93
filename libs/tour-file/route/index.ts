/** A route sheet: one row a show, with its day, place and design; and the tour that is made of it. */
export { type DayOrder, readDay } from './read-day.js';
export { type RouteRow, type RouteSheet, readRouteSheet, routeColumns } from './read-route.js';
export { type TourOfRoute, designsOfRoute, showsOfRoute, tourOfRoute } from './tour-of-route.js';
export { freeId, idOf } from './free-id.js';
