import { z } from 'zod';
import { quantity } from '#kernel';
import { degrees, name, place, sentence } from '../forms/index.js';

const share = quantity('usableShare');
/** Where a value of a regime stands, and whether it was seen there. `from memory` is never shown as authority. */
const standing = { source: sentence, status: z.enum(['found', 'from memory', 'house rule']) };

/**
 * The regime of a show: what a point load is multiplied by and what share of a rated load may be used when. All of it is data with its source; what
 * a regime does not hold is reported as missing, never assumed.
 */
export const loadRule = z.strictObject({
  id: name,
  jurisdiction: place,
  title: sentence,
  edition: name.optional(),
  /** It waits for the safety officer. */
  unaccepted: z.literal(true).optional(),
  ...standing,
  dynamicFactor: quantity('regimeFactor'),
  /** Of accessories and hoists for which nothing closer is given below. */
  usableShareWithPersonsBelow: share,
  /** Class of hoisting: factor = least + perSpeedSPerM x speedMps, in place of `dynamicFactor`. */
  hoisting: z
    .strictObject({
      ...standing,
      least: quantity('regimeFactor'),
      perSpeedSPerM: quantity('regimeSlope'),
      speedMps: quantity('regimeSlope'),
    })
    .optional(),
  /** Coefficients by element; what may be used of a rated load is nobodyBelow / personsBelow. */
  workingCoefficients: z
    .strictObject({
      ...standing,
      elements: z
        .array(
          z.strictObject({
            element: z.enum(['steel wire', 'round sling with steel core', 'textile', 'chain', 'shackle', 'other metal']),
            nobodyBelow: quantity('factor'),
            personsBelow: quantity('factor'),
          }),
        )
        .max(20),
    })
    .optional(),
  /** What a shackle may carry when it is pulled aside, by the angle from its line; beyond the last band: not permitted. */
  sideLoad: z
    .strictObject({
      ...standing,
      bands: z
        .array(z.strictObject({ upToDeg: degrees, share }))
        .min(1)
        .max(20),
    })
    .optional(),
  /** Legs of a bridle flatter than this are refused. */
  legAngle: z.strictObject({ ...standing, leastFromHorizontalDeg: quantity('legDeg') }).optional(),
  /** What a class of hoist may do over people. */
  hoistClasses: z
    .strictObject({
      ...standing,
      classes: z
        .array(
          z.strictObject({
            hoistClass: name,
            holdOverPersons: z.enum(['allowed', 'with secondary suspension', 'not allowed']),
            moveOverPersons: z.boolean(),
            usableShareWithPersonsBelow: share,
          }),
        )
        .min(1)
        .max(20),
    })
    .optional(),
  /**
   * Cases of use by the name that the regime or a standard's own numbering gives them: for whom each is, what share of a rated load a hoist is compared
   * with, and which classes of hoist are asked for; any where none is named.
   */
  useCases: z
    .strictObject({
      ...standing,
      cases: z
        .array(
          z.strictObject({
            useCase: name,
            people: z.enum(['nobody below', 'held over', 'moved over']),
            usableShare: share,
            hoistClasses: z.array(name).min(1).max(20).optional(),
          }),
        )
        .min(1)
        .max(30),
    })
    .optional(),
  /** Asked for whenever persons can be below, whatever the class of the hoist. */
  secondarySuspension: z.strictObject({ ...standing, whenPersonsBelow: z.boolean() }).optional(),
  /** The least part of the weight that each of two picks has to keep. */
  reserve: z.strictObject({ ...standing, share: quantity('reserveShare') }).optional(),
  /** What share of its rated load each line of a hang on two picks may carry while the other has gone slack; asked only where it is given. */
  onePickSlack: z.strictObject({ ...standing, usableShare: share }).optional(),
  /** How far a load cell may read from the computed value, as a share of it. */
  reading: z.strictObject({ ...standing, toleranceShare: share }).optional(),
  /** Loss of a dimension from which a piece is taken out of use. */
  wear: z
    .strictObject({
      ...standing,
      limits: z
        .array(z.strictObject({ element: name, lossShare: quantity('smallShare') }))
        .min(1)
        .max(20),
    })
    .optional(),
});

export type LoadRule = z.output<typeof loadRule>;
export type UseCase = NonNullable<LoadRule['useCases']>['cases'][number];
