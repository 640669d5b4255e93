import type { Ask } from './seal-log.js';

/** The newest head of the log's chain: whoever has it on paper can prove what stood in the log on that day. */
export interface LogHead {
  /** SHA-256, hex. */
  readonly head: string;
  readonly lines: number;
  /** When it was sealed, ISO 8601. */
  readonly sealedAt: string;
}

/** Undefined where nothing is sealed yet. */
export async function readLogHead(ask: Ask): Promise<LogHead | undefined> {
  const [found] = await ask<{ head: string; total: string; made_at: Date }>(
    'SELECT head, total, made_at FROM seal ORDER BY number DESC LIMIT 1',
  );
  return found && { head: found.head, lines: Number(found.total), sealedAt: new Date(found.made_at).toISOString() };
}
