import { type CanActivate, createParamDecorator, type ExecutionContext, HttpException, Injectable, SetMetadata } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { GqlExecutionContext } from '@nestjs/graphql';
import type { Request, Response } from 'express';
import { GraphQLError } from 'graphql';
import { NotAllowedError } from '../faults/fault.js';
import type { Role, SignedIn } from './person.js';
import { SessionStore } from './session-store.js';

export interface RequestContext {
  /** `isWhoUnknown`: nobody could look it up. */
  readonly req: Request & { signedIn?: SignedIn; isWhoUnknown?: boolean };
  readonly res: Response;
}

/** Roles that may call; without it everybody who is signed in may. */
export const Allow = (...roles: Role[]) => SetMetadata('allow', roles);
/** Also for those who are not signed in. */
export const Open = () => SetMetadata('open', true);

/** Also for those who have still to choose their own password. */
export const BeforeOwnPassword = () => SetMetadata('before own password', true);

export const Me = createParamDecorator((_data: unknown, context: ExecutionContext) => contextOf(context).req.signedIn);
export const Http = createParamDecorator((_data: unknown, context: ExecutionContext) => contextOf(context));

function contextOf(context: ExecutionContext): RequestContext {
  if (context.getType<string>() === 'graphql') return GqlExecutionContext.create(context).getContext<RequestContext>();
  return { req: context.switchToHttp().getRequest(), res: context.switchToHttp().getResponse() };
}

export const roleWords: Record<Role, string> = { warehouse: 'the warehouse', system: 'the system tech', safety: 'the safety officer' };

/** Every call needs a session unless marked Open; Allow names the roles. */
@Injectable()
export class SignedInGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly sessions: SessionStore,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const { req } = contextOf(context);
    req.signedIn ??= await this.sessions.find(req);
    const targets = [context.getHandler(), context.getClass()];
    if (this.reflector.getAllAndOverride<boolean>('open', targets)) return true;
    const http = context.getType<string>() !== 'graphql';
    if (!req.signedIn) {
      const sentence = 'Sign in first.';
      throw http ? new HttpException({ message: sentence }, 401) : new GraphQLError(sentence, { extensions: { code: 'NOT_SIGNED_IN' } });
    }
    if (req.signedIn.mustChange && !this.reflector.getAllAndOverride<boolean>('before own password', targets)) {
      const sentence = 'Choose a password of your own first.';
      throw http
        ? new HttpException({ message: sentence }, 403)
        : new GraphQLError(sentence, { extensions: { code: 'NEW_PASSWORD_WANTED' } });
    }
    const allowed = this.reflector.getAllAndOverride<Role[] | undefined>('allow', targets);
    if (!allowed || allowed.includes(req.signedIn.role)) return true;
    const sentence = `This is for ${allowed.map((role) => roleWords[role]).join(' or ')}; you are signed in as ${roleWords[req.signedIn.role]}.`;
    throw http ? new HttpException({ message: sentence }, 403) : new NotAllowedError(sentence);
  }
}
