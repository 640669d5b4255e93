import fc from 'fast-check';
import { type Action, type Answer, type KeptAction, afterAnswer, isTooOld, pauseAfter } from './queue.js';
import { memoryStore } from '../../../../../tests/support/memory-store.js';
import { ticksWith } from './pending.js';
import { type OutboxStore, workOff } from './work-off.js';

const action = (id: string, what = id, done = true): Action => ({
  id,
  kind: 'tick',
  values: { planId: 'plan', what, done },
  words: what,
  doneAt: '2027-03-01T08:00:00.000Z',
  personId: 'ana',
  personName: 'Ana',
  tourId: 'tour',
  showId: 'show',
});

const keptAt = (place: number): KeptAction => {
  const made = action(String(place));
  return { ...made, since: made.doneAt, place, state: 'waiting', reason: null, faults: 0 };
};

/** A house that carries an id out once and refuses what is named so. */
function house() {
  const seen = new Set<string>();
  const done: string[] = [];
  const state = new Set<string>();
  return {
    done,
    state,
    take({ id, values }: Action): Answer {
      if (String(values.what).startsWith('no')) return { is: 'refused', reason: 'the world says no' };
      if (!seen.has(id)) {
        seen.add(id);
        done.push(id);
        if (values.done === true) state.add(String(values.what));
        else state.delete(String(values.what));
      }
      return { is: 'taken' };
    },
  };
}

type Fate = 'through' | 'answer lost' | 'never came' | 'broken';

async function drain(store: OutboxStore, fates: readonly Fate[], at: ReturnType<typeof house>, personId = 'ana') {
  let sent = 0;
  const send = (each: KeptAction): Promise<Answer> => {
    const fate = fates[sent++] ?? 'through';
    if (fate === 'never came') return Promise.resolve({ is: 'no network' });
    if (fate === 'broken') return Promise.resolve({ is: 'broken', reason: 'an incident' });
    const answer = at.take(each);
    return Promise.resolve(fate === 'answer lost' ? { is: 'no network' } : answer);
  };
  const now = () => new Date('2027-03-02T08:00:00Z');
  while ((await workOff({ store, personId, send, now, changed: () => undefined })) !== 'empty');
}

const acts = fc.array(fc.record({ what: fc.constantFrom('row 1', 'row 2', 'row 3', 'no such row'), done: fc.boolean() }), {
  maxLength: 20,
});
const fates = fc.array(fc.constantFrom<Fate>('through', 'answer lost', 'never came', 'broken'), { maxLength: 40 });

describe('the outbox of a device', () => {
  it('brings the house to the same end state over any connection as over a good one, each action once, in order', async () => {
    await fc.assert(
      fc.asyncProperty(acts, fates, async (list, fated) => {
        // Seven breaks of one action in a row are waited for; the eighth puts it aside, which is its own test.
        const bearable = fated.map((each, index) => (each === 'broken' && index % 7 === 6 ? 'through' : each));
        const ends = [];
        for (const fate of [[], bearable]) {
          const store = memoryStore();
          const at = house();
          for (const [index, { what, done }] of list.entries()) await store.add(action(String(index), what, done));
          await drain(store, fate, at);
          ends.push({
            state: [...at.state].sort(),
            done: at.done,
            notTaken: [...store.kept.values()].map((each) => [each.id, each.reason]),
          });
        }
        expect(ends[1]).toEqual(ends[0]);
        expect(ends[0]!.done).toEqual([...new Set(ends[0]!.done)].sort((a, b) => Number(a) - Number(b)));
      }),
      { numRuns: 50, seed: 9 },
    );
  });

  it('replayed three times with the same ids it changes nothing more', async () => {
    await fc.assert(
      fc.asyncProperty(acts, fates, async (list, fated) => {
        const at = house();
        const store = memoryStore();
        for (let replay = 0; replay < 3; replay++) {
          for (const [index, { what, done }] of list.entries()) await store.add(action(String(index), what, done));
          await drain(
            store,
            fated.filter((each) => each !== 'broken'),
            at,
          );
        }
        const once = house();
        for (const [index, { what, done }] of list.entries()) once.take(action(String(index), what, done));
        expect([...at.state].sort()).toEqual([...once.state].sort());
        expect(at.done).toEqual(once.done);
      }),
      { numRuns: 50, seed: 10 },
    );
  });

  it('puts what was refused aside with its reason and goes on with the next', async () => {
    const store = memoryStore();
    const at = house();
    for (const each of [action('1', 'no row'), action('2', 'row 2')]) await store.add(each);
    await drain(store, [], at);
    expect([...at.state]).toEqual(['row 2']);
    expect([...store.kept.values()]).toMatchObject([{ id: '1', state: 'not taken', reason: 'the world says no' }]);
  });

  it('stops when signed out and keeps everything; somebody else’s actions are not sent', async () => {
    const store = memoryStore();
    await store.add(action('1'));
    await store.add({ ...action('2'), personId: 'ben' });
    const sent: string[] = [];
    const send = (each: KeptAction): Promise<Answer> => {
      sent.push(each.id);
      return Promise.resolve({ is: 'signed out' });
    };
    const now = () => new Date('2027-03-02T08:00:00Z');
    expect(await workOff({ store, personId: 'ana', send, now, changed: () => undefined })).toBe('when signed in');
    expect(sent).toEqual(['1']);
    expect(store.kept.size).toBe(2);
  });

  it('lets an action that breaks the house eight times no longer hold up the others', () => {
    let kept = keptAt(1);
    for (let time = 1; time < 8; time++) {
      const next = afterAnswer(kept, { is: 'broken', reason: 'Incident 7' });
      expect(next).toMatchObject({ goOn: 'after a pause', action: { state: 'waiting', faults: time } });
      kept = next.action!;
    }
    expect(afterAnswer(kept, { is: 'broken', reason: 'Incident 8' }).action).toMatchObject({ state: 'not taken', reason: 'Incident 8' });
  });

  it('does not send what has waited longer than the house remembers', () => {
    expect(isTooOld(keptAt(1), new Date('2027-03-30T07:59:59Z'))).toBe(false);
    expect(isTooOld(keptAt(1), new Date('2027-03-30T08:00:01Z'))).toBe(true);
  });

  it('waits longer after each failure, at most a minute', () => {
    const pauses = [1, 2, 3, 20].map((failures) => pauseAfter(failures, 1));
    expect(pauses).toEqual([1_000, 2_000, 4_000, 60_000]);
    expect(pauseAfter(1, 0)).toBe(500);
  });

  it('shows ticks as the person left them while they are on their way', () => {
    const waiting = [
      action('1', 'row 2'),
      action('2', 'row 1', false),
      { ...action('3', 'row 3'), values: { planId: 'other', what: 'row 3', done: true } },
    ];
    expect([...ticksWith(['row 1'], waiting, 'plan')]).toEqual(['row 2']);
  });
});
