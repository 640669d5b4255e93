import { Refused } from '../refused.js';
import type { Answer } from './queue.js';

/** How the sending of an action went, by what the request came to. */
export async function answerOf(sending: Promise<unknown>): Promise<Answer> {
  try {
    await sending;
    return { is: 'taken' };
  } catch (fault) {
    if (!(fault instanceof Refused)) return { is: 'broken', reason: String(fault) };
    if (fault.kind === 'network' || fault.openRequestId !== undefined) return { is: 'no network' };
    if (fault.kind === 'signed out') return { is: 'signed out' };
    if (fault.kind === 'fault') return { is: 'broken', reason: fault.message };
    const wanted = fault.faults.map((each) => `Wanted ${each.wanted}.`).join(' ');
    return { is: 'refused', reason: wanted || fault.message };
  }
}
