import { AsyncLocalStorage } from 'node:async_hooks';
import type { LoggerService } from '@nestjs/common';
import type { Logger } from 'pino';

export const LOGGER = Symbol('logger');

type Level = 'fatal' | 'error' | 'warn' | 'info' | 'debug' | 'trace';

/** The logger of the request or job under way: whatever is logged on its way carries its name. */
const underWay = new AsyncLocalStorage<Logger>();

export const logUnder = <T>(logger: Logger, work: () => T): T => underWay.run(logger, work);

/** For what is started by a request and outlives it. */
export const logOutside = <T>(work: () => T): T => underWay.exit(work);

/** Under these Nest tells, at each start, every module and route that there is. */
const bootContexts = new Set<unknown>([
  'NestFactory',
  'NestApplication',
  'InstanceLoader',
  'RoutesResolver',
  'RouterExplorer',
  'GraphQLModule',
]);

/** Takes what Nest and the features log (`new Logger('plan').warn(...)`): words, or an object whose fields stand in the line; the last text is the context. */
export class HouseLogger implements LoggerService {
  constructor(private readonly root: Logger) {}

  log = (message: unknown, ...rest: unknown[]): void => this.write(bootContexts.has(rest.at(-1)) ? 'debug' : 'info', message, rest);
  fatal = (message: unknown, ...rest: unknown[]): void => this.write('fatal', message, rest);
  error = (message: unknown, ...rest: unknown[]): void => this.write('error', message, rest);
  warn = (message: unknown, ...rest: unknown[]): void => this.write('warn', message, rest);
  debug = (message: unknown, ...rest: unknown[]): void => this.write('debug', message, rest);
  verbose = (message: unknown, ...rest: unknown[]): void => this.write('trace', message, rest);

  private write(level: Level, message: unknown, rest: readonly unknown[]): void {
    const logger = underWay.getStore() ?? this.root;
    const texts = rest.filter((each) => typeof each === 'string');
    const context = texts.at(-1);
    if (message instanceof Error) logger[level]({ context, err: message });
    else if (typeof message === 'object' && message !== null) logger[level]({ context, ...message });
    // Nest gives a stack before the context.
    else logger[level]({ context, ...(texts.length > 1 && { stack: texts[0] }) }, String(message));
  }
}
