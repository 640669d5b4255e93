import type { ApolloServerPlugin, GraphQLRequestContextDidResolveOperation } from '@apollo/server';
import { maxAliasesRule } from '@escape.tech/graphql-armor-max-aliases';
import { maxDepthRule } from '@escape.tech/graphql-armor-max-depth';
import {
  type DocumentNode,
  GraphQLError,
  type GraphQLList,
  type GraphQLSchema,
  GraphQLNonNull,
  type ValidationContext,
  type ValidationRule,
  isListType,
} from 'graphql';
import { type ComplexityEstimator, getComplexity } from 'graphql-query-complexity';
import type { RequestContext } from '../sign-in/signed-in.js';

/** What one document may hold. The screens' own stay three times below tokens and cost: a test counts. */
export const operationLimits = { tokens: 1_000, depth: 12, aliases: 15, rootFields: 10, cost: 10_000, nodes: 2_000 } as const;

/** Rows that a list without a page may have, where nothing says how many: enough that lists in lists are dear. */
const rowsOfAList = 10;
/** Rows of a page where the caller names no number, as `pageSize` has it. */
const rowsOfAPage = 50;

const namedTypesOf = ({ field }: Parameters<ComplexityEstimator>[0]): GraphQLList<never> | undefined => {
  const type = field.type instanceof GraphQLNonNull ? field.type.ofType : field.type;
  return isListType(type) ? (type as GraphQLList<never>) : undefined;
};

/** A field costs 1 and what it holds; a list as often as it has rows; a page as often as it was asked to have. */
const estimate: ComplexityEstimator = (asked) => {
  const { args, childComplexity, field } = asked;
  const isPage = field.args.some(({ name }) => name === 'after');
  const rows = isPage ? 1 + Number(args.first ?? rowsOfAPage) / rowsOfAList : namedTypesOf(asked) && childComplexity > 0 ? rowsOfAList : 1;
  return 1 + Math.max(1, rows) * childComplexity;
};

/** Cost of a document; throws where it has more nodes than anybody needs. */
export const costOf = (schema: GraphQLSchema, query: DocumentNode, variables: Record<string, unknown>, operationName?: string): number =>
  getComplexity({
    schema,
    query,
    variables,
    estimators: [estimate],
    maxQueryNodes: operationLimits.nodes,
    ...(operationName === undefined ? {} : { operationName }),
  });

/** The rules report instead of throwing: what throws while a document is checked counts as a fault of ours. */
const reporting = (what: string) => ({
  propagateOnRejection: false,
  onReject: [(context: ValidationContext | null) => context?.reportError(tooMuch(what))],
});

export const limitRules: ValidationRule[] = [
  maxDepthRule({
    n: operationLimits.depth,
    flattenFragments: true,
    ignoreIntrospection: false,
    ...reporting(`more than ${operationLimits.depth} levels`),
  }),
  maxAliasesRule({ n: operationLimits.aliases, ...reporting(`more than ${operationLimits.aliases} aliases`) }),
];

type Resolved = Pick<GraphQLRequestContextDidResolveOperation<RequestContext>, 'schema' | 'document' | 'operation' | 'request'>;

const tooMuch = (what: string): GraphQLError =>
  new GraphQLError(`This asks for too much at once: ${what}. Nothing was done; ask for it in parts.`, {
    extensions: { code: 'TOO_MUCH', http: { status: 400 } },
  });

/** What a document would cost is counted before any of it is done. */
export function limitCost(): ApolloServerPlugin<RequestContext> {
  return {
    requestDidStart: () =>
      Promise.resolve({
        didResolveOperation: ({ schema, document, operation, request }: Resolved) => {
          const fields = operation?.selectionSet.selections.length ?? 0;
          if (fields > operationLimits.rootFields) throw tooMuch(`${fields} fields, wanted at most ${operationLimits.rootFields}`);
          const cost = costWithin(schema, document, request);
          if (cost > operationLimits.cost) throw tooMuch(`it costs ${Math.round(cost)}, wanted at most ${operationLimits.cost}`);
          return Promise.resolve();
        },
      }),
  };
}

function costWithin(
  schema: GraphQLSchema,
  document: DocumentNode,
  request: { readonly variables?: Record<string, unknown>; readonly operationName?: string },
): number {
  try {
    return costOf(schema, document, request.variables ?? {}, request.operationName);
  } catch (fault) {
    // Values that do not fit are told, field by field, by whoever carries the operation out.
    if ((fault as Error).message.includes('number of nodes')) throw tooMuch(`more than ${operationLimits.nodes} nodes`);
    return 0;
  }
}
