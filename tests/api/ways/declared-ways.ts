import { RequestMethod, type Type } from '@nestjs/common';
import { ModulesContainer, Reflector } from '@nestjs/core';
import { GraphQLSchemaHost } from '@nestjs/graphql';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { type GraphQLField, type GraphQLSchema, Kind, isLeafType, getNamedType, isNonNullType, parse } from 'graphql';
import { persistedOperations } from '#contracts/operations';
import { itemKinds, modelKinds } from '#tour-file';
import { roles } from '../../../apps/api/src/platform/config/roles.js';
import { type Permission, permissionOf } from '../../../apps/api/src/platform/sign-in/signed-in.js';
import { someValue, someValues } from '../../support/some-values.js';

/** What is sent, and for whom what answers it says that it is; undefined where it does not say. */
export interface Way {
  readonly name: string;
  readonly path: string;
  readonly init: RequestInit;
  readonly permission: Permission | undefined;
  /** An operation in words of one's own, which the door takes from no stranger, open or not. */
  readonly isOwnWords?: boolean;
}

const everybody: Permission = { allowed: roles, isForStrangers: true, isBeforeOwnPassword: true, byDeputy: null };
const nobody: Permission = { allowed: [], isForStrangers: false, isBeforeOwnPassword: false, byDeputy: null };

/** What machines ask is answered before anybody is known: for whom it is stands here. */
const probes: readonly Way[] = [
  { name: 'GET /healthz', path: '/healthz', init: {}, permission: everybody },
  { name: 'GET /readyz', path: '/readyz', init: {}, permission: everybody },
  { name: 'GET /metrics', path: '/metrics', init: {}, permission: everybody },
  { name: 'GET /metrics, by way of a proxy', path: '/metrics', init: { headers: { 'x-forwarded-for': '192.0.2.1' } }, permission: nobody },
];

const operation = (body: object): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

/** Every way into a house, as the house itself lists them: fields of the schema, operations of the screens, routes. */
export function declaredWays(app: NestExpressApplication): readonly Way[] {
  const { schema } = app.get(GraphQLSchemaHost);
  const permissions = permissionsOfFields(app);
  return [...fieldWays(schema, permissions), ...screenWays(schema, permissions), ...routeWays(app), ...probes].sort(lastSignOut);
}

/** Who is signed out is a stranger from then on. */
const lastSignOut = (one: Way, other: Way): number => Number(/signout/i.test(one.name)) - Number(/signout/i.test(other.name));

/** Handlers of resolvers by the field that they answer. */
function permissionsOfFields(app: NestExpressApplication): ReadonlyMap<string, Permission | undefined> {
  const found = new Map<string, Permission | undefined>();
  for (const { metatype } of providersOf(app))
    for (const [, handler] of methodsOf(metatype)) {
      const kind: unknown = Reflect.getMetadata('graphql:resolver_type', handler);
      const name: unknown = Reflect.getMetadata('graphql:resolver_name', handler) ?? handler.name;
      if (kind !== 'Query' && kind !== 'Mutation' && kind !== 'Subscription') continue;
      found.set(`${kind} ${String(name)}`, permissionOf(new Reflector(), [handler, metatype]));
    }
  return found;
}

function providersOf(app: NestExpressApplication): { readonly metatype: Type }[] {
  const providers = [...app.get(ModulesContainer).values()].flatMap((module) => [...module.providers.values()]);
  return providers.filter(({ metatype }) => typeof metatype === 'function' && metatype.prototype) as never;
}

function methodsOf({ prototype }: Type): [string, (...args: never[]) => unknown][] {
  const names = Object.getOwnPropertyNames(prototype);
  return names
    .map((name): [string, unknown] => [name, Object.getOwnPropertyDescriptor(prototype, name)?.value])
    .filter(([, value]) => typeof value === 'function') as never;
}

/** Each field of the schema in words of one's own, with values that are on file nowhere. */
function fieldWays(schema: GraphQLSchema, permissions: ReadonlyMap<string, Permission | undefined>): Way[] {
  const roots = [schema.getQueryType(), schema.getMutationType(), schema.getSubscriptionType()];
  return roots.flatMap((root) =>
    Object.values(root?.getFields() ?? {}).map((field) => ({
      name: `${root?.name.toLowerCase()} ${field.name}`,
      path: '/graphql',
      init: operation(documentOf(root?.name.toLowerCase() ?? '', field)),
      permission: permissions.get(`${root?.name} ${field.name}`),
      isOwnWords: true,
    })),
  );
}

function documentOf(kind: string, field: GraphQLField<unknown, unknown>): object {
  const wanted = field.args.filter((each) => isNonNullType(each.type) && each.defaultValue === undefined);
  const list = (parts: string[]) => (parts.length > 0 ? `(${parts.join(', ')})` : '');
  const declared = list(wanted.map((each) => `$${each.name}: ${String(each.type)}`));
  const given = list(wanted.map((each) => `${each.name}: $${each.name}`));
  const selection = isLeafType(getNamedType(field.type)) ? '' : ' { __typename }';
  return {
    query: `${kind} Own${declared} { ${field.name}${given}${selection} }`,
    variables: Object.fromEntries(wanted.map((each) => [each.name, someValue(each.type)])),
  };
}

/** Each operation of the screens by its hash, as strangers may send it: for whom all of its fields are. */
function screenWays(schema: GraphQLSchema, permissions: ReadonlyMap<string, Permission | undefined>): Way[] {
  return Object.entries(persistedOperations).map(([sha256Hash, text]) => {
    const document = parse(text);
    const [definition] = document.definitions;
    if (definition?.kind !== Kind.OPERATION_DEFINITION) throw new Error(`an operation of the screens does not come first: ${text}`);
    const root = `${definition.operation[0]?.toUpperCase()}${definition.operation.slice(1)}`;
    const fields = definition.selectionSet.selections.map((each) => (each.kind === Kind.FIELD ? each.name.value : 'a fragment'));
    return {
      name: `screens ${definition.name?.value}: ${fields.join(', ')}`,
      path: '/graphql',
      init: operation({ variables: someValues(schema, document), extensions: { persistedQuery: { version: 1, sha256Hash } } }),
      permission: fields.map((each) => permissions.get(`${root} ${each}`)).reduce(both),
    };
  });
}

const both = (one: Permission | undefined, other: Permission | undefined): Permission | undefined =>
  one &&
  other && {
    allowed: one.allowed.filter((each) => other.allowed.includes(each)),
    isForStrangers: one.isForStrangers && other.isForStrangers,
    isBeforeOwnPassword: one.isBeforeOwnPassword && other.isBeforeOwnPassword,
    byDeputy: one.byDeputy && other.byDeputy,
  };

interface Layer {
  readonly route?: { readonly path: string; readonly methods: Readonly<Record<string, boolean>> };
  readonly handle?: { readonly stack?: readonly Layer[] };
}

/** Each route that the server answers, one for each kind where it has kinds; a route that no controller has must stand under `probes`. */
function routeWays(app: NestExpressApplication): Way[] {
  const permissions = permissionsOfRoutes(app);
  const { router } = app.getHttpAdapter().getInstance() as { router: { stack: readonly Layer[] } };
  return routesOf(router.stack)
    .filter((route) => !probes.some(({ name }) => name === route))
    .flatMap((route) => {
      const [method = '', path = ''] = route.split(' ');
      return filled(path).map((each) => ({
        name: `${method} ${each}`,
        path: each,
        init: { method, headers: { 'x-cartwright': '1', ...bodyFor(method, each).headers }, ...bodyFor(method, each).body },
        permission: permissions.get(route),
      }));
    });
}

const routesOf = (stack: readonly Layer[]): string[] =>
  stack.flatMap(({ route, handle }) =>
    route ? Object.keys(route.methods).map((method) => `${method.toUpperCase()} ${route.path}`) : routesOf(handle?.stack ?? []),
  );

function permissionsOfRoutes(app: NestExpressApplication): ReadonlyMap<string, Permission | undefined> {
  const controllers = [...app.get(ModulesContainer).values()].flatMap((module) => [...module.controllers.values()]);
  const found = new Map<string, Permission | undefined>();
  for (const { metatype } of controllers as unknown as { metatype: Type }[])
    for (const [, handler] of methodsOf(metatype)) {
      const path: unknown = Reflect.getMetadata('path', handler);
      const method: unknown = Reflect.getMetadata('method', handler);
      if (typeof path !== 'string' || typeof method !== 'number') continue;
      const parts = [String(Reflect.getMetadata('path', metatype)), path].map((each) => each.replaceAll(/^\/|\/$/g, ''));
      found.set(`${RequestMethod[method]} /${parts.filter(Boolean).join('/')}`, permissionOf(new Reflector(), [handler, metatype]));
    }
  return found;
}

/** A path for each kind that it may be of; ids of nothing that is on file. */
function filled(path: string): string[] {
  const kinds = path.includes('/models/') ? modelKinds : itemKinds;
  const paths = path.includes(':kind') ? kinds.map((kind) => path.replace(':kind', kind)) : [path];
  return paths.map((each) => each.replaceAll(/:\w+/g, '00000000-0000-4000-8000-000000000000'));
}

/** A body of the form that the route takes, with nothing in it that could be kept. */
function bodyFor(method: string, path: string): { headers: Record<string, string>; body: RequestInit } {
  if (method === 'GET') return { headers: {}, body: {} };
  if (path.startsWith('/api/csv')) return { headers: { 'content-type': 'text/csv' }, body: { body: 'x\r\n' } };
  if (path.startsWith('/api/reports')) return { headers: { 'content-type': 'application/pdf' }, body: { body: '%PDF-1.7' } };
  return { headers: { 'content-type': 'application/json' }, body: { body: '{}' } };
}
