/** What the API is told from outside; read once at the start. */
export interface Config {
  readonly databaseUrl: string;
  readonly port: number;
  /** Folder with the built screens; null when another server gives them out. */
  readonly webFolder: string | null;
  /** Cookies only over TLS: set where a TLS proxy stands in front. */
  readonly secureCookies: boolean;
}

export const CONFIG = Symbol('config');
export const CLOCK = Symbol('clock');

/** Instants come from here, so that tests can stand still. */
export interface Clock {
  now(): Date;
}

export const systemClock: Clock = { now: () => new Date() };

/** Today as a plain date of the house (UTC unless TZ says otherwise). */
export const today = (clock: Clock): string => {
  const now = clock.now();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`;
};
