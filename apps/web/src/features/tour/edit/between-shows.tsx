import { useQuery } from '@tanstack/react-query';
import { graphql } from '#contracts';
import { request } from '../../../platform/request.js';
import { Loaded } from '../../../ui/page.js';

const betweenQuery = graphql(`query BetweenShows($tourId: ID!) { betweenShows(tourId: $tourId) { from to what } }`);

/** From show to show: which carts roll on as they are, which stay on the truck, what is restacked and why. */
export function BetweenShows({ tourId }: { tourId: string }) {
  const query = useQuery({ queryKey: ['between', tourId], queryFn: () => request(betweenQuery, { tourId }) });
  return (
    <Loaded query={query}>
      {({ betweenShows }) =>
        betweenShows.length === 0 ? (
          <p className="quiet">Plan two shows that follow one another to see what happens to the carts between them.</p>
        ) : (
          <>
            {betweenShows.map(({ from, to, what }) => (
              <div key={`${from} ${to}`}>
                <h3>
                  {from} to {to}
                </h3>
                <p>
                  {what.rollOn.length} carts roll on as they are
                  {what.restacked.length === 0
                    ? ' and nothing is restacked.'
                    : `; ${what.restacked.length} are restacked. ${what.work.sentence}`}
                </p>
                {what.stayOnTruck.length > 0 && (
                  <p>
                    Stay on the truck:{' '}
                    {what.stayOnTruck.map((each, index) => (
                      <span key={each.cart}>
                        {index > 0 && ', '}
                        <span className="mono">{each.cart}</span> ({each.load})
                      </span>
                    ))}
                    .
                  </p>
                )}
                {what.restacked.length > 0 && (
                  <ul>
                    {what.restacked.map((each) => (
                      <li key={each.load}>
                        {each.load} {each.cart ? `(${each.cart})` : ''}: {each.why}.
                      </li>
                    ))}
                  </ul>
                )}
              </div>
            ))}
          </>
        )
      }
    </Loaded>
  );
}
