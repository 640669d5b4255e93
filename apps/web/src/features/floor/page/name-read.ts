import { matchCode } from '#pack-plan';
import { request } from '../../../platform/request.js';
import { floorCodeQuery } from './operations.js';

export type NameRead =
  | { readonly is: 'known'; readonly id: string; readonly kind: string; readonly count: number | null }
  | { readonly is: 'said'; readonly sentence: string };

/** What a code stands for: one of what is known here, else what the house knows of it. */
export async function nameRead(
  planId: string,
  code: string,
  known: readonly { readonly id: string; readonly kind: string }[],
): Promise<NameRead> {
  const match = matchCode(
    code,
    known.map((each) => each.id),
  );
  if (match.is === 'several') return { is: 'said', sentence: `${code.trim()} can mean ${match.ids.join(' or ')}: type it whole.` };
  const here = match.is === 'one' ? known.find((each) => each.id === match.id) : undefined;
  if (here) return { is: 'known', id: here.id, kind: here.kind, count: null };
  try {
    const found = (await request(floorCodeQuery, { planId, code })).floorCode;
    if (found) return { is: 'known', id: found.id, kind: found.kind, count: found.count };
    return {
      is: 'said',
      sentence: `Nothing on file is called ${code.trim().slice(0, 60)}. A label of somebody else, or damaged: type the serial.`,
    };
  } catch {
    return { is: 'said', sentence: `${code.trim().slice(0, 60)} is not of this show; without a network it cannot be said what it is.` };
  }
}
