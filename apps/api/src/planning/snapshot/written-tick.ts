import { type TickKey, tickText } from '#pack-plan';

/** A tick as it is on file; one of before ticks had keys keeps its text as its subject. */
export type WrittenTick = Omit<TickKey, 'kind'> & { readonly kind: TickKey['kind'] | 'as written' };

export const textOfTick = ({ kind, subject, place }: WrittenTick): string =>
  kind === 'as written' ? subject : tickText({ kind, subject, place });
