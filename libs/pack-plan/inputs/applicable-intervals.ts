import { type Place, intervalsIn } from '#inspection-calendar';
import type { Item, PlaceAnswer, TourFile } from '#tour-file';

type Ruled = Pick<TourFile, 'examinationRules'> & { readonly tour: Pick<TourFile['tour'], 'jurisdictions' | 'placeAnswers'> };

/** The places that a tour visits, with the rules on file and whose are taken where a place has none. */
export const placeOf = ({ tour, examinationRules }: Ruled): Place<PlaceAnswer> => ({
  jurisdictions: tour.jurisdictions,
  rules: examinationRules,
  taken: tour.placeAnswers ?? [],
});

/** The intervals that an item is examined at on this tour. */
export const applicableIntervals = (file: Ruled, item: Item): readonly string[] => intervalsIn(item, placeOf(file));
