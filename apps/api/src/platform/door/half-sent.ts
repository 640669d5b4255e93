import type { RequestHandler, Response } from 'express';
import type { AtOnce } from '../config/at-once.js';
import type { RequestContext } from '../sign-in/signed-in.js';
import { networkOf } from '../sign-in/tries.js';
import { answerRefused } from './answer-refused.js';

interface Waiting {
  readonly place: string;
  readonly response: Response;
}

/**
 * Bodies of strangers that did not come whole with their head wait here. One that comes is never turned away for those that dawdle: where there is no
 * room, from its address or at all, the one that has been on its way longest is given up for it.
 */
export function boundHalfSent(most: AtOnce['halfSent']): RequestHandler {
  // In the order in which they came.
  const waiting = new Set<Waiting>();
  const giveUp = (oldest: Waiting | undefined) => {
    if (!oldest) return;
    waiting.delete(oldest);
    if (oldest.response.headersSent) return;
    oldest.response.setHeader('connection', 'close');
    answerRefused(oldest.response, 408, 'TOO_LATE', 'The body dawdled while others came. Nothing was done; send it again.');
  };
  return (request: RequestContext['req'], response, next) => {
    if (request.signedIn || request.complete || request.method === 'GET' || request.method === 'HEAD') return next();
    const one: Waiting = { place: networkOf(request.ip ?? ''), response };
    const ofAddress = [...waiting].filter(({ place }) => place === one.place);
    if (ofAddress.length >= most.address) giveUp(ofAddress[0]);
    else if (waiting.size >= most.all) giveUp([...waiting][0]);
    waiting.add(one);
    const there = () => waiting.delete(one);
    request.once('end', there);
    response.once('close', there);
    next();
  };
}
