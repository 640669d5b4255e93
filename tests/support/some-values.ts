import {
  type DocumentNode,
  type GraphQLInputType,
  type GraphQLSchema,
  Kind,
  isEnumType,
  isInputObjectType,
  isListType,
  isNonNullType,
  typeFromAST,
} from 'graphql';

/** Values for the variables of an operation that must be given: of the right types, and of nothing that is on file. */
export function someValues(schema: GraphQLSchema, document: DocumentNode): Record<string, unknown> {
  const operation = document.definitions.find((each) => each.kind === Kind.OPERATION_DEFINITION);
  return Object.fromEntries(
    (operation?.variableDefinitions ?? [])
      .filter((each) => each.type.kind === Kind.NON_NULL_TYPE)
      .map((each) => [each.variable.name.value, someValue(typeFromAST(schema, each.type as never) as GraphQLInputType)]),
  );
}

const scalars: Record<string, unknown> = { String: 'x', ID: 'x', Int: 1, Float: 1, Boolean: true };

export function someValue(type: GraphQLInputType): unknown {
  if (isNonNullType(type)) return someValue(type.ofType);
  if (isListType(type)) return [];
  if (isEnumType(type)) return type.getValues()[0]?.name;
  if (!isInputObjectType(type)) return scalars[type.name] ?? {};
  const wanted = Object.values(type.getFields()).filter((field) => isNonNullType(field.type));
  return Object.fromEntries(wanted.map((field) => [field.name, someValue(field.type)]));
}
