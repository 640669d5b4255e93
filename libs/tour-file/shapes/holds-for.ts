import type { Booking, Tour } from './tour.js';

/** Whether a promise is to this tour itself: by its id; by its name only where the promise says no id. */
export const holdsFor = (booking: Booking, tour: Pick<Tour, 'id' | 'name'>): boolean =>
  booking.tourId === undefined ? booking.tour === tour.name : booking.tourId === tour.id;
