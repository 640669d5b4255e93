import { useQueryClient } from '@tanstack/react-query';
import { type ReactNode, createContext, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react';
import { newId } from '../requests-over.js';
import { answerOf } from './answer-of.js';
import { deviceStore } from './device-store.js';
import { type Action, type Answer, type KeptAction, pauseAfter } from './queue.js';
import { workOff } from './work-off.js';

/** What can be done on the floor. */
export interface ActionKind {
  /** Brings it to the house; throws `Refused`. */
  readonly send: (values: never, options: { requestId: string; doneAt: string }) => Promise<unknown>;
  /** First words of the queries that are read again once it is taken. */
  readonly reads: readonly string[];
  /** Where the answer is itself what a query would read: its key and data. */
  readonly answers?: (values: never, answer: never) => { readonly key: readonly unknown[]; readonly data: unknown };
}

export type ActionKinds = Readonly<Record<string, ActionKind>>;

export interface NewAction {
  readonly kind: string;
  readonly values: Readonly<Record<string, unknown>>;
  readonly words: string;
  readonly tourId: string;
  readonly showId: string;
}

interface Outbox {
  /** Of the person who is signed in: not sent yet, or sent and not yet read back. */
  readonly waiting: readonly Action[];
  readonly unsent: number;
  readonly notTaken: readonly KeptAction[];
  /** Of other people on this device, by name. */
  readonly ofOthers: readonly { readonly name: string; readonly count: number }[];
  /** Fulfilled when the action is on disk; rejected where the device has no room. */
  readonly put: (action: NewAction) => Promise<void>;
  readonly dismiss: (action: KeptAction) => Promise<void>;
  readonly sendAgain: (action: KeptAction) => Promise<void>;
}

const Context = createContext<Outbox | null>(null);
const store = deviceStore();

export function useOutbox(): Outbox {
  const outbox = useContext(Context);
  if (!outbox) throw new Error('no outbox around this component');
  return outbox;
}

/** What is done on the floor goes through here: on disk first, then to the house as soon as there is a way. */
export function OutboxProvider({
  person,
  kinds,
  children,
}: {
  person: { readonly id: string; readonly name: string };
  kinds: ActionKinds;
  children: ReactNode;
}) {
  const [kept, setKept] = useState<readonly KeptAction[]>([]);
  const { settling, settle } = useSettling(kinds);
  const read = useCallback(async () => setKept(await store.all()), []);
  const forget = useCallback(({ id }: KeptAction) => setKept((before) => before.filter((each) => each.id !== id)), []);
  const wake = useSending(person.id, { kinds, read, settle, forget });
  const tell = useTelling(read);
  const { adding, keep } = useKeeping();
  const put = useCallback(
    async (action: NewAction) => {
      await keep({ ...action, id: newId(), doneAt: new Date().toISOString(), personId: person.id, personName: person.name }, read);
      tell();
      wake();
    },
    [person, keep, read, tell, wake],
  );
  const outbox = useMemo((): Outbox => {
    const own = kept.filter((each) => each.personId === person.id);
    const onDisk = own.filter((each) => each.state === 'waiting');
    const unsent: readonly Action[] = [...onDisk, ...adding.filter((each) => !onDisk.some(({ id }) => id === each.id))];
    const names = [...new Set(kept.filter((each) => each.personId !== person.id).map((each) => each.personName))];
    const after = (work: Promise<void>) => work.then(read).then(tell).then(wake);
    return {
      waiting: [...settling, ...unsent],
      unsent: unsent.length,
      notTaken: own.filter((each) => each.state === 'not taken'),
      ofOthers: names.map((name) => ({ name, count: kept.filter((each) => each.personName === name).length })),
      put,
      dismiss: (action) => after(store.remove(action.place)),
      sendAgain: (action) => after(store.put({ ...action, state: 'waiting', reason: null, faults: 0, since: new Date().toISOString() })),
    };
  }, [kept, settling, adding, person.id, put, read, tell, wake]);
  return <Context.Provider value={outbox}>{children}</Context.Provider>;
}

/** A tap is shown at once; where the device then has no room for it, it is taken back and said. */
function useKeeping() {
  const [adding, setAdding] = useState<readonly Action[]>([]);
  const keep = useCallback(async (action: Action, read: () => Promise<void>) => {
    setAdding((before) => [...before, action]);
    try {
      await store.add(action);
      void navigator.storage?.persist?.();
      await read();
    } finally {
      setAdding((before) => before.filter((each) => each.id !== action.id));
    }
  }, []);
  return { adding, keep };
}

/** What the house has taken is shown as done until the page has been read again; what is taken meanwhile waits for the reading after. */
function useSettling(kinds: ActionKinds) {
  const [settling, setSettling] = useState<readonly KeptAction[]>([]);
  const client = useQueryClient();
  const run = useRef({ taken: [] as KeptAction[], isReading: false });
  const readAgain = useCallback(async () => {
    if (run.current.isReading) return;
    run.current.isReading = true;
    while (run.current.taken.length > 0) {
      const taken = run.current.taken.splice(0);
      const reads = new Set(taken.flatMap(({ kind }) => kinds[kind]?.reads ?? []));
      await client.invalidateQueries({ predicate: ({ queryKey }) => reads.has(String(queryKey[0])) });
      const ids = new Set(taken.map(({ id }) => id));
      setSettling((before) => before.filter(({ id }) => !ids.has(id)));
    }
    run.current.isReading = false;
  }, [client, kinds]);
  const settle = useCallback(
    (taken: KeptAction) => {
      run.current.taken.push(taken);
      setSettling((before) => [...before, taken]);
      void readAgain();
    },
    [readAgain],
  );
  return { settling, settle };
}

/** Other tabs of this browser see what was put in and what was taken. */
function useTelling(read: () => Promise<void>): () => void {
  const channel = useRef<BroadcastChannel | null>(null);
  useEffect(() => {
    const own = new BroadcastChannel('cartwright-outbox');
    channel.current = own;
    own.onmessage = () => void read();
    void read();
    return () => own.close();
  }, [read]);
  return useCallback(() => channel.current?.postMessage('changed'), []);
}

interface Sending {
  readonly kinds: ActionKinds;
  readonly read: () => Promise<void>;
  readonly settle: (taken: KeptAction) => void;
  /** Off the screen; off the disk it is already. */
  readonly forget: (taken: KeptAction) => void;
}

/** Works the queue off in one tab at a time; gives what wakes it. */
function useSending(personId: string, { kinds, read, settle, forget }: Sending): () => void {
  const wakeRef = useRef<() => void>(() => undefined);
  const client = useQueryClient();
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let isGone = false;
    let isWorking = false;
    let isWoken = false;
    let failures = 0;
    const once = () =>
      workOff({
        store,
        personId,
        send: (action) => sendOne(kinds, action, (key, data) => client.setQueryData(key, data)),
        now: () => new Date(),
        changed: (taken) => {
          failures = 0;
          if (!taken) return void read();
          settle(taken);
          forget(taken);
        },
      });
    const work = async () => {
      isWoken = true;
      if (isWorking || isGone) return;
      isWorking = true;
      while (isWoken && !isGone) {
        isWoken = false;
        const end = await alone(once);
        // A reading that began before the last removal is overtaken.
        void read();
        if (end === 'when signed in') void client.invalidateQueries({ queryKey: ['me'] });
        if (end !== 'after a pause') continue;
        failures++;
        clearTimeout(timer);
        timer = setTimeout(() => void work(), pauseAfter(failures, Math.random()));
      }
      isWorking = false;
    };
    const wake = () => void work();
    wakeRef.current = wake;
    addEventListener('online', wake);
    wake();
    return () => {
      isGone = true;
      clearTimeout(timer);
      removeEventListener('online', wake);
    };
  }, [personId, kinds, read, settle, forget, client]);
  return useCallback(() => wakeRef.current(), []);
}

/** One tab sends at a time, where the browser has locks; where not, the house takes each id once all the same. */
function alone<T>(work: () => Promise<T>): Promise<T> {
  return 'locks' in navigator ? navigator.locks.request('cartwright-outbox', work) : work();
}

async function sendOne(kinds: ActionKinds, action: KeptAction, take: (key: readonly unknown[], data: unknown) => void): Promise<Answer> {
  const kind = kinds[action.kind];
  if (!kind) return { is: 'refused', reason: 'This version of Cartwright has no such action any more.' };
  return answerOf(
    kind.send(action.values as never, { requestId: action.id, doneAt: action.doneAt }).then((answer) => {
      const read = kind.answers?.(action.values as never, answer as never);
      if (read) take(read.key, read.data);
    }),
  );
}
