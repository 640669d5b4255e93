import { type UseMutationResult, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { type AnswerOf, request } from '../../../platform/request.js';
import { Faults } from '../../../ui/faults.js';
import { Loaded } from '../../../ui/page.js';
import { takenAlongQuery } from '../edit/removal-operations.js';

type TakenAlong = AnswerOf<typeof takenAlongQuery>['takenAlong'];

/** Removing a tour or a show: asked for once, what it takes along said, then done. */
export function RemovePart({
  what,
  tourId,
  showId,
  remove,
}: {
  what: 'tour' | 'show';
  tourId: string;
  showId?: string;
  remove: UseMutationResult<unknown, Error, void>;
}) {
  const [isAsked, setAsked] = useState(false);
  const query = useQuery({
    queryKey: ['taken along', tourId, showId],
    queryFn: () => request(takenAlongQuery, { tourId, showId: showId ?? null }),
    enabled: isAsked,
    staleTime: 0,
  });
  if (!isAsked)
    return (
      <button type="button" className="plain" onClick={() => setAsked(true)}>
        Remove the {what} ...
      </button>
    );
  return (
    <Loaded query={query}>
      {({ takenAlong }) => (
        <>
          <p>What the removal takes along:</p>
          <ul>
            {sentences(what, takenAlong).map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
          <div className="row">
            <button type="button" disabled={remove.isPending} onClick={() => remove.mutate()}>
              Remove the {what}
            </button>
            <button type="button" className="plain" onClick={() => setAsked(false)}>
              Keep it
            </button>
          </div>
          <Faults of={remove.error} />
        </>
      )}
    </Loaded>
  );
}

const count = (number: number, one: string, more = `${one}s`): string => `${number} ${number === 1 ? one : more}`;

function sentences(what: 'tour' | 'show', { shows, hangs, boxes, drafts, inForce, revisions, givenBack }: TakenAlong): string[] {
  return [
    `${what === 'tour' ? `${count(shows, 'show')} with ` : ''}${count(hangs, 'hang')} and ${count(boxes, 'box', 'boxes')} in ${hangs === 1 ? 'it' : 'them'}.`,
    ...(drafts > 0 ? [`${count(drafts, 'draft')}: kept, and nobody works on ${drafts === 1 ? 'it' : 'them'} meanwhile.`] : []),
    ...inForce.map(
      (each) => `${each}: superseded from now on. Who has it on paper or on a phone is told when they next do something on it.`,
    ),
    ...(revisions > 0
      ? [`${count(revisions, 'released revision')}: closed, never removed. ${revisions === 1 ? 'It stays' : 'They stay'} on file.`]
      : []),
    givenBack > 0
      ? `${count(givenBack, 'item is', 'items are')} given back from today on: others may book ${givenBack === 1 ? 'it' : 'them'}.`
      : 'Nothing is given back: nothing is held for it alone.',
    `The ${what} can be put back; what was released is then planned and released again.`,
  ];
}
