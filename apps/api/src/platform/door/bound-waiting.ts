import type { RequestHandler, Response } from 'express';
import type { AtOnce } from '../config/at-once.js';
import type { SessionStore } from '../sign-in/session-store.js';
import type { RequestContext } from '../sign-in/signed-in.js';
import { networkOf } from '../sign-in/tries.js';
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

/** As soon as it is known who asks: nobody who is signed in takes the places of all others. */
export function boundEach(atOnce: AtOnce): RequestHandler {
  const places = new Places();
  return (request: Asked, response, next) => {
    const who = request.signedIn?.id;
    if (who === undefined || isStream(request)) return next();
    const own = places.of(who);
    if (own >= atOnce.person)
      return refuseBusy(response, `You have ${own} requests under way already. Nothing was done; try again when some are answered.`);
    response.once('close', places.take(who));
    next();
  };
}

/**
 * Once the body of a stranger is there: what is still on its way takes no place here. A device that somebody has signed in at has places of its own
 * where strangers have taken theirs; so many at once are asked for as there are such places.
 */
export function boundStrangers(atOnce: AtOnce, sessions: Pick<SessionStore, 'isAtKnownDevice'>): RequestHandler {
  const places = new Places();
  let known = 0;
  return async (request: Asked, response, next) => {
    if (request.signedIn || isStream(request)) return next();
    const place = networkOf(request.ip ?? '');
    const isFull = places.all >= atOnce.strangers;
    if (!isFull && places.of(place) < atOnce.address) {
      response.once('close', places.take(place));
      return next();
    }
    if (known < atOnce.knownDevices) {
      known++;
      response.once('close', () => known--);
      if (await sessions.isAtKnownDevice(request).catch(() => false)) return next();
    }
    const whose = isFull ? 'ask' : 'ask from your address';
    refuseBusy(response, `Too many who are not signed in ${whose} at once. Nothing was done; try again in a few seconds.`);
  };
}

function refuseBusy(response: Response, sentence: string): void {
  response.setHeader('retry-after', '2');
  answerRefused(response, 429, 'BUSY', sentence);
}

/** Places that are taken, by who has them. */
class Places {
  all = 0;
  private readonly taken = new Map<string, number>();

  of(who: string): number {
    return this.taken.get(who) ?? 0;
  }

  /** Gives what gives the place back. */
  take(who: string): () => void {
    this.all++;
    this.taken.set(who, this.of(who) + 1);
    return () => {
      this.all--;
      const left = this.of(who) - 1;
      if (left > 0) this.taken.set(who, left);
      else this.taken.delete(who);
    };
  }
}
