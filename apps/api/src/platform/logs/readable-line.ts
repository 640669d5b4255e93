/** What a logged object says, as far as a short line shows it. */
interface Logged {
  readonly time?: string;
  readonly level?: string;
  readonly msg?: string;
  readonly context?: string;
  readonly incident?: string;
  readonly req?: { readonly id?: string; readonly method?: string; readonly path?: string };
  readonly operation?: string;
  readonly status?: number;
  readonly ms?: number;
  readonly job?: string;
  readonly err?: { readonly message?: string; readonly stack?: string };
}

/** One JSON line of the log as a short line for people: time of day, level unless it is usual, what happened; a stack below it. */
export function readableLine(json: string): string {
  const logged = JSON.parse(json) as Logged;
  const parts = [
    logged.time?.slice(11, 19),
    logged.level === 'info' ? undefined : logged.level,
    logged.context && `[${logged.context}]`,
    logged.req && `${logged.req.method} ${logged.req.path}`,
    logged.operation,
    logged.job && `job ${logged.job}`,
    logged.status,
    logged.msg ?? (logged.err?.stack ? undefined : logged.err?.message),
    logged.ms !== undefined && `${logged.ms} ms`,
    logged.incident && `incident ${logged.incident}`,
    logged.req?.id && `request ${logged.req.id}`,
  ].filter((part) => part !== undefined && part !== false && part !== '');
  return `${parts.join(' ')}\n${logged.err?.stack ? `${logged.err.stack}\n` : ''}`;
}
