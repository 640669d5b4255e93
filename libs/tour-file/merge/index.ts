/** Two people in one tour: what each changed, laid over one another. */
export { type TourClash, mergeTours } from './merge-tours.js';
