/** Places by the codes of ISO 3166: the list, what was written before there was one, and where a rule holds. */
export { countryCodes } from './country-codes.js';
export { countryOf, holdsAt, isPartOfCountry, isPlaceCode, nearestPlace, placeCodeOf, placeName } from './place-code.js';
