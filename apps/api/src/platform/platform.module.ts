import { type DynamicModule, Global, Module } from '@nestjs/common';
import { APP_FILTER, APP_GUARD, APP_INTERCEPTOR } from '@nestjs/core';
import { CLOCK, CONFIG, type Clock, type Config } from './config.js';
import { UnitOfWork } from './database/unit-of-work.js';
import { ToldFaultsFilter } from './graphql/told-faults.filter.js';
import { JobQueue } from './job-queue.js';
import { ForgetOldRequests } from './request-once/forget-old-requests.js';
import { RequestController } from './request-once/request.controller.js';
import { RequestOnce } from './request-once/request-once.interceptor.js';
import { SessionStore } from './sign-in/session-store.js';
import { SignedInGuard } from './sign-in/signed-in.js';

/** What no feature owns: config, clock, unit of work, sessions, the guard on every call. */
@Global()
@Module({})
export class PlatformModule {
  static with(config: Config, clock: Clock): DynamicModule {
    return {
      module: PlatformModule,
      controllers: [RequestController],
      providers: [
        { provide: CONFIG, useValue: config },
        { provide: CLOCK, useValue: clock },
        UnitOfWork,
        SessionStore,
        JobQueue,
        ForgetOldRequests,
        { provide: APP_INTERCEPTOR, useClass: RequestOnce },
        { provide: APP_GUARD, useClass: SignedInGuard },
        { provide: APP_FILTER, useClass: ToldFaultsFilter },
      ],
      exports: [CONFIG, CLOCK, UnitOfWork, SessionStore, JobQueue],
    };
  }
}
