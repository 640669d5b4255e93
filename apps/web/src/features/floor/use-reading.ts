import { useRef, useState } from 'react';
import { type CartLoad, type CartsResult, type HouseAnswer, progressOf, readCode } from '#pack-plan';
import type { ReadFinding } from '#trade';
import { useOutbox } from '../../platform/outbox/outbox.js';
import { request } from '../../platform/request.js';
import { useBarred } from '../plan/barred-notes.js';
import type { OnFloor } from './on-floor.js';
import { floorCodeQuery } from './operations.js';
import { signal } from './signal.js';

const isRight = ({ code }: ReadFinding): boolean => code === 'right' || code === 'read-before' || code === 'this-cart';
/** What the house can still tell more about. */
const asks = ({ code }: ReadFinding): boolean => code === 'ask-the-house' || code === 'unknown';

/** Boxes of one cart as they are read; what was read is kept over a reload of the page. */
export function useReading({ show, plan }: OnFloor, carts: CartsResult, load: CartLoad) {
  const key = `reading ${plan.id} ${load.id}`;
  const [read, setRead] = useState<readonly string[]>(() => JSON.parse(sessionStorage.getItem(key) ?? '[]') as string[]);
  const [said, setSaid] = useState<ReadFinding | null>(null);
  const [unkept, setUnkept] = useState<unknown>(null);
  const [confirmed, setConfirmed] = useState(false);
  const { items, against } = useBarred(plan.id);
  const outbox = useOutbox();
  const last = useRef(0);
  const isBarred = items.some((each) => each.loads.includes(load.id));
  const keep = (serials: readonly string[]) => {
    setRead(serials);
    sessionStorage.setItem(key, JSON.stringify(serials));
  };
  /** `serials`: as they stand, top first. */
  const send = (serials: readonly string[], agrees: boolean) => {
    const words = `${show.name}: read ${load.cart ?? 'no cart'} for ${load.id}, ${agrees ? 'agrees' : 'does not agree'}`;
    outbox
      .put({ kind: 'cart', values: { planId: plan.id, load: load.id, serials }, words, tourId: show.tourId, showId: show.showId })
      .catch((fault: unknown) => setUnkept(fault));
    setConfirmed(agrees);
    signal(agrees);
  };
  const take = (finding: ReadFinding, isFinal = true) => {
    setSaid(finding);
    if (finding.code !== 'right') return isFinal ? signal(isRight(finding)) : undefined;
    const serials = [...read, finding.box];
    keep(serials);
    const progress = progressOf(load, serials);
    if (progress.is === 'in order' && !isBarred) send(progress.serials, true);
    else signal(true);
  };
  const onCode = async (code: string) => {
    const given = { carts, load, read, barred: against };
    const first = readCode(given, code);
    const turn = ++last.current;
    take(first, !asks(first));
    if (!asks(first)) return;
    const house = await request(floorCodeQuery, { planId: plan.id, code: 'box' in first ? first.box : code }).then(
      (answer) => answer.floorCode,
      () => undefined,
    );
    // Something else was read meanwhile: that is what is said.
    if (turn === last.current) take(house === undefined ? first : readCode({ ...given, house: house as HouseAnswer | null }, code));
  };
  return {
    read,
    said,
    unkept,
    isBarred,
    isConfirmed: confirmed,
    progress: progressOf(load, read),
    onCode: (code: string) => void onCode(code),
    standsSo: (serials: readonly string[], agrees: boolean) => send(serials, agrees),
    again: () => {
      keep([]);
      setSaid(null);
      setConfirmed(false);
    },
  };
}

export type Reading = ReturnType<typeof useReading>;
