import { useRef, useState } from 'react';
import { type CartLoad, type CartsResult, type HouseAnswer, checkCart, progressOf, readCode } from '#pack-plan';
import type { ReadFinding } from '#trade';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { request } from '../../../platform/request.js';
import { useBarred } from '../../plan/barred-notes.js';
import type { OnFloor } from '../page/on-floor.js';
import { floorCodeQuery } from '../page/operations.js';
import { signal } from '../page/signal.js';

const isRight = ({ code }: ReadFinding): boolean => code === 'right' || code === 'read-before' || code === 'this-cart';
/** What the house can still tell more about. */
const asks = ({ code }: ReadFinding): boolean => code === 'ask-the-house' || code === 'unknown';

/** Boxes of one cart as they are read; what was read is kept over a reload of the page. */
export function useReading(given: OnFloor, carts: CartsResult, load: CartLoad) {
  const key = `reading ${given.plan.id} ${load.id}`;
  const [read, setRead] = useState<readonly string[]>(() => JSON.parse(sessionStorage.getItem(key) ?? '[]') as string[]);
  const [said, setSaid] = useState<ReadFinding | null>(null);
  const { items, against } = useBarred(given.plan.id);
  const sending = useSending(given, carts, load);
  const last = useRef(0);
  const isBarred = items.some((each) => each.loads.includes(load.id));
  // Several codes in one view come one after the other, before anything is drawn anew.
  const now = useRef(read);
  const keep = (serials: readonly string[]) => {
    now.current = serials;
    setRead(serials);
    sessionStorage.setItem(key, JSON.stringify(serials));
  };
  const take = (finding: ReadFinding, isFinal = true) => {
    setSaid(finding);
    if (finding.code !== 'right') return isFinal ? signal(isRight(finding)) : undefined;
    const serials = [...now.current, finding.box];
    keep(serials);
    const progress = progressOf(load, serials);
    if (progress.is === 'in order' && !isBarred) sending.send(progress.serials, true);
    else signal(true);
  };
  const onCode = async (code: string) => {
    const cart = () => ({ carts, load, read: now.current, barred: against });
    const first = readCode(cart(), code);
    const turn = ++last.current;
    take(first, !asks(first));
    if (!asks(first)) return;
    const house = await askHouse(given.plan.id, 'box' in first ? first.box : code);
    // Something else was read meanwhile: that is what is said.
    if (turn === last.current) take(house === undefined ? first : readCode({ ...cart(), house }, code));
  };
  return {
    ...sending,
    read,
    said,
    isBarred,
    progress: progressOf(load, read),
    onCode: (code: string) => void onCode(code),
    takeLast: () => {
      keep(read.slice(0, -1));
      setSaid(null);
      sending.forget();
    },
    again: () => {
      keep([]);
      setSaid(null);
      sending.forget();
    },
  };
}

export type Reading = ReturnType<typeof useReading>;

/** What the house knows of a code; undefined where it cannot be asked. */
async function askHouse(planId: string, code: string): Promise<HouseAnswer | null | undefined> {
  try {
    return (await request(floorCodeQuery, { planId, code })).floorCode as HouseAnswer | null;
  } catch {
    return undefined;
  }
}

/** Brings a reading to the house, whether the cart agrees or not. */
function useSending({ show, plan }: OnFloor, carts: CartsResult, load: CartLoad) {
  const [unkept, setUnkept] = useState<unknown>(null);
  const [isConfirmed, setConfirmed] = useState(false);
  /** What is wrong where it stands otherwise than planned. */
  const [otherwise, setOtherwise] = useState<readonly string[]>([]);
  const outbox = useOutbox();
  /** `serials`: as they stand, top first. */
  const send = (serials: readonly string[], agrees: boolean) => {
    const words = `${show.name}: read ${load.cart ?? 'no cart'} for ${load.id}, ${agrees ? 'agrees' : 'does not agree'}`;
    outbox
      .put({ kind: 'cart', values: { planId: plan.id, load: load.id, serials }, words, tourId: show.tourId, showId: show.showId })
      .catch((fault: unknown) => {
        setUnkept(fault);
        setConfirmed(false);
        signal(false);
      });
    setConfirmed(agrees);
    setOtherwise(agrees ? [] : checkCart({ carts }, load, serials).flatMap((each) => (each.agrees ? [] : [each.sentence])));
    signal(agrees);
  };
  const forget = () => {
    setConfirmed(false);
    setOtherwise([]);
  };
  return { unkept, isConfirmed, otherwise, send, forget };
}
