import { type Place, intervalsIn } from '#inspection-calendar';
import type { Item, TourFile } from '#tour-file';

type Ruled = Pick<TourFile, 'examinationRules'> & { readonly tour: Pick<TourFile['tour'], 'jurisdictions'> };

/** The places that a tour visits, with the rules on file. */
export const placeOf = ({ tour, examinationRules }: Ruled): Place => ({ jurisdictions: tour.jurisdictions, rules: examinationRules });

/** The intervals that an item is examined at on this tour. */
export const applicableIntervals = (file: Ruled, item: Item): readonly string[] => intervalsIn(item, placeOf(file));
