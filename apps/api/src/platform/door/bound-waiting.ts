import type { RequestHandler } from 'express';
import type { AtOnce } from '../config/at-once.js';
import type { RequestContext } from '../sign-in/signed-in.js';
import { answerRefused } from './answer-refused.js';

type Asked = RequestContext['req'];

/** Streams are open as long as their pages, and counted where they are told. */
const isStream = ({ originalUrl }: Asked): boolean => originalUrl.startsWith('/api/events');

/** Before anything else is done: a house that is full says so at once instead of letting everybody wait. */
export function boundAll(atOnce: AtOnce): RequestHandler {
  let underWay = 0;
  return (request, response, next) => {
    if (isStream(request)) return next();
    if (underWay >= atOnce.all) {
      response.setHeader('retry-after', '2');
      const sentence = 'The house has more to do than it can take at this moment. Nothing was done; try again in a few seconds.';
      return answerRefused(response, 503, 'BUSY', sentence);
    }
    underWay++;
    response.once('close', () => underWay--);
    next();
  };
}

/** As soon as it is known who asks: nobody takes the places of all others. */
export function boundEach(atOnce: AtOnce): RequestHandler {
  const underWay = new Map<string, number>();
  return (request: Asked, response, next) => {
    if (isStream(request)) return next();
    const who = request.signedIn?.id ?? 'strangers';
    const own = underWay.get(who) ?? 0;
    if (own >= (request.signedIn ? atOnce.person : atOnce.strangers)) {
      response.setHeader('retry-after', '2');
      const sentence = request.signedIn
        ? `You have ${own} requests under way already. Nothing was done; try again when some are answered.`
        : 'Too many who are not signed in ask at once. Nothing was done; try again in a few seconds.';
      return answerRefused(response, 429, 'BUSY', sentence);
    }
    underWay.set(who, own + 1);
    response.once('close', () => {
      const left = (underWay.get(who) ?? 1) - 1;
      if (left > 0) underWay.set(who, left);
      else underWay.delete(who);
    });
    next();
  };
}
