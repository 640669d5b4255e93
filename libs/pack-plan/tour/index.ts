/** A whole tour: prep and every load-in planned together, kept up to a show where somebody says so; what stays, what is rebuilt and why. */
export { type WholeTourAnswer, type WholeTourAsked, planWholeTour } from './plan-whole-tour.js';
