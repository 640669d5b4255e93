import { type DynamicModule, Global, Module } from '@nestjs/common';
import { APP_FILTER, APP_GUARD, APP_INTERCEPTOR } from '@nestjs/core';
import type { Logger } from 'pino';
import type { Words } from '#words';
import { CLOCK, CONFIG, type Clock, type Config } from './config/config.js';
import { UnitOfWork } from './database/unit-of-work.js';
import { FaultFilter } from './faults/fault.filter.js';
import { LOGGER } from './logs/house-logger.js';
import { JobLog } from './logs/job-log.js';
import { Metrics } from './metrics/metrics.js';
import { ReadinessCheck } from './readiness.js';
import { LogSealer } from './seal/log-sealer.js';
import { Housekeeping } from './housekeeping.js';
import { SizeDays } from './database/size-days.js';
import { ChangeFeed } from './live/change-feed.js';
import { ChangeLog } from './live/change-log.js';
import { LiveController } from './live/live.controller.js';
import { RequestLog } from './request-once/request-log.js';
import { RequestController } from './request-once/request.controller.js';
import { RequestOnce } from './request-once/request-once.interceptor.js';
import { SessionStore } from './sign-in/session-store.js';
import { SignInTries } from './sign-in/tries.js';
import { DeputyScopes } from './sign-in/deputy.js';
import { SignedInGuard } from './sign-in/signed-in.js';
import { WORDS } from './config/words.js';

/** What no feature owns: config, clock, unit of work, sessions, what changes, metrics, the guard on every call. */
@Global()
@Module({})
export class PlatformModule {
  static with(config: Config, clock: Clock, logger: Logger, words: Words): DynamicModule {
    return {
      module: PlatformModule,
      controllers: [RequestController, LiveController],
      providers: [
        { provide: CONFIG, useValue: config },
        { provide: CLOCK, useValue: clock },
        { provide: LOGGER, useValue: logger },
        { provide: WORDS, useValue: words },
        UnitOfWork,
        SessionStore,
        DeputyScopes,
        SignInTries,
        JobLog,
        Metrics,
        ReadinessCheck,
        RequestLog,
        Housekeeping,
        SizeDays,
        LogSealer,
        ChangeLog,
        ChangeFeed,
        { provide: APP_INTERCEPTOR, useClass: RequestOnce },
        { provide: APP_GUARD, useClass: SignedInGuard },
        { provide: APP_FILTER, useClass: FaultFilter },
      ],
      exports: [
        CONFIG,
        CLOCK,
        WORDS,
        UnitOfWork,
        LogSealer,
        SessionStore,
        DeputyScopes,
        SignInTries,
        ChangeFeed,
        JobLog,
        Metrics,
        ReadinessCheck,
        SizeDays,
      ],
    };
  }
}
