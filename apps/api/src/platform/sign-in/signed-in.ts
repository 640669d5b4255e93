import { type CanActivate, createParamDecorator, type ExecutionContext, HttpException, Injectable, SetMetadata } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { GqlExecutionContext } from '@nestjs/graphql';
import type { Request, Response } from 'express';
import { GraphQLError } from 'graphql';
import { NotAllowedError } from '../faults/fault.js';
import { roles } from '../config/roles.js';
import { type About, DeputyScopes } from './deputy.js';
import type { Role, SignedIn } from './person.js';
import { SessionStore } from './session-store.js';

export interface RequestContext {
  /** `isWhoUnknown`: nobody could look it up. */
  readonly req: Request & { signedIn?: SignedIn; isWhoUnknown?: boolean };
  readonly res: Response;
}

/** Roles that may call. */
export const Allow = (...roles: Role[]) => SetMetadata('allow', roles);
/** Everybody who is signed in. */
export const AllowEverybody = () => Allow(...roles);
/** Also for those who are not signed in. */
export const Open = () => SetMetadata('open', true);

/** What a way for the safety officer is about, by the names of its arguments, where a deputy may go it as well; `rows`: it looks itself. */
export type DeputyWay = 'house' | 'rows' | { readonly item: string } | { readonly tour: string };
/** Also for deputies of the safety officer, within what they are deputy of. What does not say so is for the officer alone. */
export const ByDeputy = (about: DeputyWay) => SetMetadata('by deputy', about);

/** Also for those who have still to choose their own password. */
export const BeforeOwnPassword = () => SetMetadata('before own password', true);

/** Who a field or a route is answered for as deputy: of that one alone, so that the next of the same request is asked anew. */
const actingFor = new WeakMap<object, SignedIn>();
const oneOf = (context: ExecutionContext): object =>
  context.getType<string>() === 'graphql' ? GqlExecutionContext.create(context).getInfo<object>() : contextOf(context).req;

export const Me = createParamDecorator(
  (_data: unknown, context: ExecutionContext) => actingFor.get(oneOf(context)) ?? contextOf(context).req.signedIn,
);
export const Http = createParamDecorator((_data: unknown, context: ExecutionContext) => contextOf(context));

function contextOf(context: ExecutionContext): RequestContext {
  if (context.getType<string>() === 'graphql') return GqlExecutionContext.create(context).getContext<RequestContext>();
  return { req: context.switchToHttp().getRequest(), res: context.switchToHttp().getResponse() };
}

export const roleWords: Record<Role, string> = { warehouse: 'the warehouse', system: 'the system tech', safety: 'the safety officer' };

/** Why somebody of this role may not. */
export const forOthers = (allowed: readonly Role[], role: Role): string =>
  `This is for ${allowed.map((each) => roleWords[each]).join(' or ')}; you are signed in as ${roleWords[role]}.`;

/** For whom a call is. */
export interface Permission {
  readonly allowed: readonly Role[];
  readonly isForStrangers: boolean;
  readonly isBeforeOwnPassword: boolean;
  readonly byDeputy: DeputyWay | null;
}

type Targets = Parameters<Reflector['getAllAndOverride']>[1];

/** What a handler, or else its class, says; undefined where neither says for whom it is. */
export function permissionOf(reflector: Reflector, targets: Targets): Permission | undefined {
  const isForStrangers = reflector.getAllAndOverride<true | undefined>('open', targets) === true;
  const allowed = reflector.getAllAndOverride<Role[] | undefined>('allow', targets);
  if (!isForStrangers && !allowed) return undefined;
  const isBeforeOwnPassword = reflector.getAllAndOverride<true | undefined>('before own password', targets) === true;
  const byDeputy = reflector.getAllAndOverride<DeputyWay | undefined>('by deputy', targets) ?? null;
  return { allowed: allowed ?? roles, isForStrangers, isBeforeOwnPassword: isForStrangers || isBeforeOwnPassword, byDeputy };
}

function aboutOf(way: Exclude<DeputyWay, 'rows'>, context: ExecutionContext): About {
  const given: Record<string, unknown> =
    context.getType<string>() === 'graphql' ? GqlExecutionContext.create(context).getArgs() : contextOf(context).req.params;
  const text = (name: string): string => {
    const value = given[name];
    return typeof value === 'string' ? value : '';
  };
  if (way === 'house') return {};
  return 'item' in way ? { item: text(way.item) } : { tour: text(way.tour) };
}

/** Every call needs a session unless marked Open; Allow names the roles. What says nothing is for nobody. */
@Injectable()
export class SignedInGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly sessions: SessionStore,
    private readonly deputies: DeputyScopes,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const { req } = contextOf(context);
    req.signedIn ??= await this.sessions.find(req);
    const permission = permissionOf(this.reflector, [context.getHandler(), context.getClass()]);
    if (permission?.isForStrangers) return true;
    const http = context.getType<string>() !== 'graphql';
    if (!req.signedIn) {
      const sentence = 'Sign in first.';
      throw http ? new HttpException({ message: sentence }, 401) : new GraphQLError(sentence, { extensions: { code: 'NOT_SIGNED_IN' } });
    }
    if (req.signedIn.mustChange && !permission?.isBeforeOwnPassword) {
      const sentence = 'Choose a password of your own first.';
      throw http
        ? new HttpException({ message: sentence }, 403)
        : new GraphQLError(sentence, { extensions: { code: 'NEW_PASSWORD_WANTED' } });
    }
    const { role } = req.signedIn;
    if (permission?.allowed.includes(role)) return true;
    if (permission?.byDeputy && (await this.comesAsDeputy(permission.byDeputy, context))) return true;
    const sentence = permission ? forOthers(permission.allowed, role) : 'This is for nobody: it does not say for whom it is.';
    throw http ? new HttpException({ message: sentence }, 403) : new NotAllowedError(sentence);
  }

  /** Where rows decide, whoever has any deputyship is let on, to be asked again there. */
  private async comesAsDeputy(way: DeputyWay, context: ExecutionContext): Promise<boolean> {
    const { req } = contextOf(context);
    if (!req.signedIn || req.signedIn.deputyships.length === 0) return false;
    if (way === 'rows') return true;
    const acting = await this.deputies.acting(req.signedIn, aboutOf(way, context));
    if (acting) actingFor.set(oneOf(context), acting);
    return acting !== undefined;
  }
}
