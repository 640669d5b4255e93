import { type DestinationStream, type Logger, destination, pino, stdTimeFunctions } from 'pino';
import type { Config } from '../config/config.js';
import { readableLine } from './readable-line.js';
import { withoutPersonalWords } from './without-personal-words.js';

/** Names whose values are never written, wherever they stand in what is logged. */
const neverLogged = ['password', 'passwordHash', 'token', 'cookie', 'authorization', 'email', 'variables', 'body', 'parameters'];

/** The one logger of a process: a JSON object a line, or short lines for people. `to` is where lines go; the standard output unless told otherwise. */
export function makeLogger({ logLevel, logFormat }: Pick<Config, 'logLevel' | 'logFormat'>, to?: DestinationStream): Logger {
  const out = to ?? destination({ fd: 1, sync: true });
  return pino(
    {
      level: logLevel,
      base: undefined,
      timestamp: stdTimeFunctions.isoTime,
      formatters: { level: (level) => ({ level }) },
      serializers: { err: withoutPersonalWords },
      redact: {
        paths: neverLogged.flatMap((name) => [name, `*.${name}`, `*.*.${name}`, `*.headers["set-cookie"]`]),
        censor: '(not logged)',
      },
    },
    logFormat === 'json' ? out : { write: (line) => out.write(readableLine(line)) },
  );
}
