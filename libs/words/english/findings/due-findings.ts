import { type DaySubject, type FindingOf, isPlaceCode, nearestPlace, placeName } from '#trade';
import { type Words, tell } from '../../table/index.js';
import { judged, plural } from '../parts/index.js';

export const whereabouts: Words['whereabouts'] = {
  box: ({ name, position }) => `${name}, position ${position}`,
  grid: ({ name }) => `${name}, grid`,
  hoist: ({ name, hole }) => `${name}, hole ${hole}`,
  spare: () => 'spare, hung nowhere',
  case: (each) => `in ${each.case}`,
  'fitted-to-boxes': () => 'fitted to the boxes',
  loose: () => 'loose, in no case',
  'not-in-plan': () => 'not in this plan',
};

function remedy(visit: DaySubject | null, cannotBeSaved: boolean): string {
  if (visit) return ` The examiner’s visit on ${visit.on} clears it.`;
  return cannotBeSaved ? ' No visit day on the list can clear it in time.' : '';
}

const kind = ({ itemKind, count }: { readonly itemKind: string; readonly count: number | null }): string =>
  count === null ? itemKind : `${itemKind} batch (${count})`;

const notInDate = (finding: FindingOf<'overdue' | 'no-record' | 'blocked' | 'failed'>): string =>
  `${finding.subjects.item.id} (${kind(finding)}): ${tell(judged, finding.judged)}${remedy(finding.subjects.visit, finding.cannotBeSaved)}`;

export const dueFindings: Pick<
  Words['findings'],
  'not-judged' | 'judged-elsewhere' | 'falls-due' | 'overdue' | 'no-record' | 'blocked' | 'failed' | 'long-tour' | 'checker-disagrees'
> = {
  'not-judged': ({ subjects: { place, tour }, ruled }) =>
    `${isPlaceCode(place.id) ? placeName(place.id) : `${place.id}, which is not a code on the list,`} is visited by ${tour.name}, and no examination rule of it is on file: nothing that lifts is judged there. ${isPlaceCode(place.id) ? 'Enter its rules' : `Choose its place, the nearest is ${placeName(nearestPlace(place.id))}`}${ruled.length === 0 ? '' : `, or name a place that has rules (${ruled.join(', ')})`}.`,
  'judged-elsewhere': ({ subjects: { place, rulesOf, tour }, because, decidedBy, decidedOn }) =>
    `${placeName(place.id)} is visited by ${tour.name} and has no examination rules on file. It is judged by the rules of ${placeName(rulesOf.id)}, because: ${because}. Decided by ${decidedBy} on ${decidedOn}. They may not be the law there.`,
  'falls-due': (finding) =>
    `${finding.subjects.item.id} (${kind(finding)}, ${tell(whereabouts, finding.where)}) runs out on ${finding.date}, with ${plural(finding.numbers.showsAfter, 'show')} of this tour after it.${remedy(finding.subjects.visit, finding.cannotBeSaved)}`,
  overdue: notInDate,
  'no-record': notInDate,
  blocked: notInDate,
  failed: notInDate,
  'checker-disagrees': ({ subjects: { about, check, found } }) =>
    `The check of ${check.text} does not agree with this plan. ${about.text}: ${found.text}. It cannot be released; tell whoever looks after Cartwright.`,
  'long-tour': ({ numbers: { days } }) => `The tour lasts ${days} days. Examinations and losses are judged over all of them.`,
};
