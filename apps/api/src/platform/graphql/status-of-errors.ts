import type { ApolloServerPlugin, GraphQLRequestContext } from '@apollo/server';
import type { RequestContext } from '../sign-in/signed-in.js';

/**
 * An operation that the database did not answer has the status of a plain route, 503: whatever stands in between knows to ask again. Any other that was
 * carried out has 200, whatever its errors are; one that was not keeps the status of its refusal.
 */
export function statusOfErrors(): ApolloServerPlugin<RequestContext> {
  return {
    requestDidStart: () =>
      Promise.resolve({
        willSendResponse: ({ response: { body, http } }: Pick<GraphQLRequestContext<RequestContext>, 'response'>) => {
          if (body?.kind !== 'single') return Promise.resolve();
          const { singleResult } = body;
          if (singleResult.errors?.some((each) => each.extensions?.code === 'DATABASE_AWAY')) http.status = 503;
          else if ('data' in singleResult) http.status = 200;
          return Promise.resolve();
        },
      }),
  };
}
