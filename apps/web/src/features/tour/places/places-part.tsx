import { useQuery } from '@tanstack/react-query';
import { placeName } from '#trade';
import { type Person, actsAsOfficer } from '../../../platform/person.js';
import { type AnswerOf, request } from '../../../platform/request.js';
import { dayOf } from '../../../platform/written.js';
import { Loaded } from '../../../ui/page.js';
import { Note } from '../../../ui/notes.js';
import { AnswerForm } from './answer-form.js';
import { tourPlacesQuery } from './operations.js';

type Places = AnswerOf<typeof tourPlacesQuery>['tourPlaces'];
type TourPlace = Places['places'][number];

/** Each place that the tour visits with the rules it is judged by; where it has none the safety officer answers whose are taken. */
export function PlacesPart({ tourId, me }: { tourId: string; me: Person }) {
  const query = useQuery({ queryKey: ['tour-places', tourId], queryFn: () => request(tourPlacesQuery, { tourId }) });
  return (
    <Loaded query={query}>
      {({ tourPlaces }) => (
        <ul className="plain">
          {tourPlaces.places.map((each) => (
            <li key={each.place}>
              <Standing of={each} mayAnswer={actsAsOfficer(me)} />
              {!each.hasRules && actsAsOfficer(me) && (
                <AnswerForm tourId={tourId} of={each} ruled={tourPlaces.ruled} home={tourPlaces.home ?? null} />
              )}
              <Earlier of={each} />
            </li>
          ))}
        </ul>
      )}
    </Loaded>
  );
}

function Standing({ of: { place, hasRules, judgedBy, decisions }, mayAnswer }: { of: TourPlace; mayAnswer: boolean }) {
  if (hasRules) return <p>{placeName(place)}: its own rules are on file.</p>;
  const [newest] = decisions;
  if (judgedBy && newest)
    return (
      <Note weight="look">
        {placeName(place)}: no rules on file. Judged by the rules of {placeName(judgedBy)}, because: {newest.because}. Decided by{' '}
        {newest.decidedBy} on {dayOf(newest.decidedAt)}. They may not be the law there.
      </Note>
    );
  return (
    <Note weight="stop">
      {placeName(place)}: no rules on file, so nothing that lifts is judged there.
      {mayAnswer ? '' : ' The safety officer enters its rules, or answers whose are taken on this tour.'}
    </Note>
  );
}

function Earlier({ of: { hasRules, judgedBy, decisions } }: { of: TourPlace }) {
  const earlier = hasRules || judgedBy === null ? decisions : decisions.slice(1);
  if (earlier.length === 0) return null;
  return (
    <details>
      <summary>Decided before</summary>
      <ul>
        {earlier.map((each) => (
          <li key={each.decidedAt}>
            {dayOf(each.decidedAt)}, {each.decidedBy}: {each.rulesOf ? `the rules of ${placeName(each.rulesOf)}` : 'not judged again'},
            because: {each.because}.
          </li>
        ))}
      </ul>
    </details>
  );
}
