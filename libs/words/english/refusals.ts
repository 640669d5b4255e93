import type { CellReading, ReasonAgainst } from '#trade';
import { type Words, tell } from '../table/index.js';
import { against } from './findings/index.js';
import { number, parts } from './parts/index.js';

export const refusals: Words['refusals'] = {
  'release-clashes': ({ show, clash }) =>
    `${clash.item} is promised to ${clash.tour} from ${clash.from} to ${clash.to}. ${show} was not released; make the plan again.`,
  'release-stale': () => 'The inputs changed since this draft was made. Make the plan again, then release it.',
  'offer-stale': () => 'The inputs changed since the shorter list was found; it was not taken in. Plan again to follow them.',
  'release-barred': () => 'A checker does not agree with this plan. It cannot be released, for whatever reason.',
  'release-says-stop': ({ stops }) =>
    `This plan says stop ${stops === 1 ? 'once' : `${stops} times`}. Who releases it says why; the reason is printed on every sheet.`,
  'release-needs-officer': ({ stops }) =>
    `This plan says stop ${stops === 1 ? 'once' : `${stops} times`} over dates, rated loads or places that are not judged. The safety officer alone releases it, with the reason; the reason is printed on every sheet.`,
  'hold-clashes': ({ name, clash }) =>
    `${clash.item} is promised to ${clash.tour} from ${clash.from} to ${clash.to}. Nothing was held for ${name}.`,
  'swap-breaks-rules': ({ truck, first, second }) => `Rows ${first} and ${second} of ${truck} cannot change places.`,
  'swap-out-of-turn': ({ truck, first, second }) =>
    `Exchanged, rows ${first} and ${second} of ${truck} do not come off in their turn. Say why that may be.`,
  'trucks-cannot-be-loaded': () => 'The trucks cannot be loaded like that; nothing was changed.',
  'tour-too-short': ({ shows }) =>
    `${shows === 0 ? 'No show' : 'One show'} of this tour wants carts: a tour is planned as a whole from two shows on.`,
  'tour-nothing-to-keep': ({ shows }) => `There is no plan of ${shows} shows of this tour that could stay as it is; plan all of it.`,
  'tour-not-as-kept': ({ show, load, boxes }) =>
    boxes.length > 0
      ? `${show} cannot stay as it is planned: ${boxes.join(', ')} of ${load ?? 'its carts'} must not fly there. Keep fewer shows.`
      : `${show} cannot stay as it is planned: ${load ? `${load} is` : 'its loads are'} designed otherwise by now. Keep fewer shows.`,
  'tour-show-not-served': ({ show, models, carts }) =>
    `${show} cannot be served, so the tour was not planned as a whole: ${
      [
        ...models.map(({ model, missing }) => `${missing} of ${model} ${missing === 1 ? 'is' : 'are'} missing`),
        ...(carts > 0 ? [`${carts} ${carts === 1 ? 'cart is' : 'carts are'} missing`] : []),
      ].join(', ') || 'not every load finds a cart'
    }. Its own plan says more.`,
  'tour-fails-its-check': ({ fault }) => `The plan of the tour failed its check and was not kept: ${fault}.`,
};

export const moveBackRefusals: Words['moveBackRefusals'] = {
  'not-moved': ({ box, from, to }) => `a move that was made; nobody has noted ${box} from ${from} to ${to}, or it was taken back already`,
  'moved-since': ({ box, from, to, later }) =>
    `the last move of its carts; ${later} was moved after ${box} went from ${from} to ${to}: take that back first, or work on`,
  'read-anew': ({ box, from, to }) =>
    `a move that still stands; since ${box} went from ${from} to ${to} somebody wrote down how the cart stands: work on from there`,
};

export const tickRefusals: Words['tickRefusals'] = {
  'unknown-step': () => 'the key of a row of a truck, or of a step of a lift sequence, of this plan',
  'not-released': ({ show }) => `a step of the released revision of ${show}: what hangs is what was released`,
  'going-up-open': ({ open }) => `going up finished first; ${open} of its holds ${open === 1 ? 'is' : 'are'} open`,
  'hold-open': ({ step }) => `everything waits for: ${step}`,
  'only-read': ({ step }) => `a hold; this step is read, not ticked: ${step}`,
  'system-not-approved': ({ system }) =>
    `the data of the rigging system ${system} is not approved: an example, not for use; nothing of it is ticked`,
  'later-ticked': () => 'holds after this one are ticked; take them back first',
  barred: ({ items }) => `nothing that must not fly: ${barredItemsWords(items)}`,
};

/** Items that must not fly, each with its reason; what a place that is not judged keeps back is said once for all. */
function barredItemsWords(items: readonly { readonly item: string; readonly why: ReasonAgainst }[]): string {
  const said = new Map<string, string[]>();
  for (const { item, why } of items) {
    const reason = tell(against, why);
    said.set(reason, [...(said.get(reason) ?? []), item]);
  }
  return [...said]
    .map(([reason, named]) => `${named.slice(0, 4).join(', ')}${named.length > 4 ? ` and ${named.length - 4} more` : ''} (${reason})`)
    .join(', ');
}

const because = (remark: string | null): string => (remark ? `: ${remark}` : '');

export const remedies: Words['remedies'] = {
  examination: ({ box, day }) => `${box} is not in date on ${day}: an examination before then frees it.`,
  'release from quarantine': ({ box, remark }) =>
    `${box} is quarantined${because(remark)}. The safety officer releases it once that is mended.`,
  repair: ({ box, remark }) => `${box} is in repair${because(remark)}.`,
  'another depot': ({ box, depot }) => `${box} is free at ${depot}: bring it over.`,
  return: ({ box, tour, until, freeFrom }) =>
    `${box} is promised to ${tour} until ${until}; it is free from ${freeFrom}, or sooner if they give it back.`,
  'longer hire': ({ box, from, until, day }) => `${box} is hired in from ${from} to ${until} only; ask its owner for ${day}.`,
};

const read = ({ readingKg, place, hole }: CellReading): string => `${number(readingKg)} kg read ${place} of hole ${hole}`;
const off = ({ computedKg, differenceShare }: { readonly computedKg: number; readonly differenceShare: number }): string =>
  `${number(Math.abs(differenceShare) * 100, 1)} % ${differenceShare < 0 ? 'less' : 'more'} than the computed ${number(computedKg)} kg`;

export const readings: Words['readings'] = {
  'nothing-computed': (fact) => `${read(fact.read)}; nothing was computed for this point.`,
  'over-allowed': (fact) =>
    `${read(fact.read)}: more than is allowed of ${fact.over.map((each) => `${tell(parts, each.part)} (${number(each.limitKg)} kg)`).join(', ')}. Stop; let it down.`,
  'no-tolerance': (fact) => `${read(fact.read)}: ${off(fact)}. The regime states no tolerance.`,
  agrees: (fact) => `${read(fact.read)}: ${off(fact)}.`,
  'beyond-tolerance': (fact) =>
    `${read(fact.read)}: ${off(fact)}, beyond the ${number(fact.toleranceShare * 100, 1)} % of the regime. Stop; find out why before anything goes higher.`,
};
