import type { ApolloServerPlugin, GraphQLRequestContext } from '@apollo/server';
import { Kind, getNamedType, isUnionType, type GraphQLFormattedError, type GraphQLSchema } from 'graphql';
import type { RequestContext } from '../sign-in/signed-in.js';
import type { Metrics, OperationOutcome } from '../metrics/metrics.js';

const outcomeOf: Record<string, OperationOutcome> = {
  FAULT: 'fault',
  NOT_ALLOWED: 'not allowed',
  NOT_SIGNED_IN: 'not allowed',
  NOT_FOUND: 'not found',
};

/**
 * Counts each GraphQL request under what it asks for first, "mutation tick": names of fields are closed, names that a caller gives are not. Tells the
 * request's log line the same words.
 */
export function countOperations(metrics: Metrics): ApolloServerPlugin<RequestContext> {
  return {
    requestDidStart: () => {
      const start = performance.now();
      let operation = 'unreadable';
      let refused = false;
      return Promise.resolve({
        didResolveOperation: ({ operation: asked, contextValue }) => {
          const first = asked?.selectionSet.selections.find((each) => each.kind === Kind.FIELD);
          operation = `${asked?.operation} ${first?.name.value ?? '(fragment)'}`;
          (contextValue.req as { operation?: string }).operation = operation;
          return Promise.resolve();
        },
        executionDidStart: () =>
          Promise.resolve({
            willResolveField: ({ info }) => {
              const named = getNamedType(info.returnType);
              if (info.path.prev || !isUnionType(named)) return;
              return (_fault, value) => {
                if (isRefusal(named.name, value, info.schema)) refused = true;
              };
            },
          }),
        willSendResponse: (context) => {
          const outcome = refused ? 'refused' : outcomeIn(context);
          metrics.operations.inc({ operation, outcome });
          metrics.operationSeconds.observe({ operation }, (performance.now() - start) / 1000);
          return Promise.resolve();
        },
      });
    },
  };
}

/** Whether the union's own rule takes the value for a member whose name ends in "Refusal". */
function isRefusal(union: string, value: unknown, schema: GraphQLSchema): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const type = schema.getType(union);
  if (!isUnionType(type)) return false;
  const name: unknown = type.resolveType?.(value, {}, { schema } as never, type);
  return typeof name === 'string' && name.endsWith('Refusal');
}

function outcomeIn({ response }: Pick<GraphQLRequestContext<RequestContext>, 'response'>): OperationOutcome {
  const { body } = response;
  const errors: readonly GraphQLFormattedError[] = (body?.kind === 'single' && body.singleResult.errors) || [];
  if (errors.length === 0) return 'done';
  const codes = errors.map((each) => String(each.extensions?.code));
  return codes.includes('FAULT') ? 'fault' : (codes.map((code) => outcomeOf[code]).find((each) => each !== undefined) ?? 'bad input');
}
