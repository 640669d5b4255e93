import { setTimeout as pause } from 'node:timers/promises';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { type Result, ok, refuse } from '#kernel';
import type { Words } from '#words';
import { CLOCK, type Clock } from '../config/config.js';
import { WORDS } from '../config/words.js';
import { sayWhatWasDone } from '../acts/said.js';
import { OutcomeUnknownError } from '../faults/fault.js';
import { claimRequest, keepAnswer } from '../request-once/claim.js';
import { type CurrentRequest, currentRequest } from '../request-once/current-request.js';
import { databaseErrorOf, isConnectionLost } from '../faults/database-error.js';
import { noteWritten } from '../faults/written.js';

export type Isolation = 'SERIALIZABLE' | 'READ COMMITTED';

class RolledBack extends Error {
  constructor(readonly refusal: unknown) {
    super('rolled back');
  }
}

/** Thrown by work that found itself overtaken: the whole transaction is tried again. */
export class TryAgain extends Error {}

/** 40001 serialization failure, 40P01 deadlock: the whole transaction is tried again. */
const tryAgain = new Set(['40001', '40P01']);

const isOvertaken = (fault: unknown): boolean => fault instanceof TryAgain || tryAgain.has(databaseErrorOf(fault)?.code ?? '');

/** How often a transaction that others got in the way of is tried. */
const attempts = 12;

/** How long a write waits for a database that is started again, ms; then it is told that it does not answer. */
const patienceMs = 6_000;

/**
 * The only way to write: one SERIALIZABLE transaction, tried again as a whole; the manager is the only handle in scope. READ COMMITTED is for
 * work that locks every row it decides on, in one order. A refusal rolls back what was written. A write that its client named (`Idempotency-Key`) is done once: its id and its value are
 * kept in the same transaction, and the same id again gets the value without the work.
 */
@Injectable()
export class UnitOfWork {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  async run<T, R = never>(
    work: (manager: EntityManager) => Promise<Result<T, R>>,
    isolation: Isolation = 'SERIALIZABLE',
  ): Promise<Result<T, R>> {
    const request = currentRequest();
    const until = performance.now() + patienceMs;
    let isOpen = false;
    for (let attempt = 1; ; attempt++) {
      const state = { isWorkDone: false };
      try {
        const outcome = await this.once(work, isolation, request, state);
        if (request) request.step++;
        noteWritten('saved');
        return outcome;
      } catch (fault) {
        if (fault instanceof RolledBack) return refuse(fault.refusal as R);
        const isLost = isConnectionLost(fault);
        // The answer to a commit that was lost on the way: by its id the next attempt finds it, and without an id nobody can.
        isOpen ||= isLost && state.isWorkDone;
        const isAgain = isLost ? performance.now() < until : isOvertaken(fault) && attempt < attempts;
        if (!isAgain || (isOpen && !request)) {
          if (!isOpen) throw fault;
          noteWritten('open');
          throw new OutcomeUnknownError(fault);
        }
        await pause(Math.random() * Math.min(400, 5 * 2 ** attempt) + (isLost ? 250 : 0));
      }
    }
  }

  private once<T, R>(
    work: (manager: EntityManager) => Promise<Result<T, R>>,
    isolation: Isolation,
    request: CurrentRequest | undefined,
    state: { isWorkDone: boolean },
  ): Promise<Result<T, R>> {
    return this.dataSource.transaction(isolation, async (manager) => {
      const claim = request && (await claimRequest(manager, request, this.clock.now()));
      if (claim && !claim.isNew) return ok(claim.answer as T);
      const outcome = await work(manager);
      if (!outcome.ok) throw new RolledBack(outcome.error);
      await sayWhatWasDone(manager, this.clock.now(), request?.doneAt ?? null, (operation) => this.words.didBy(operation));
      if (claim) await keepAnswer(manager, claim.place, outcome.value);
      state.isWorkDone = true;
      return outcome;
    });
  }
}
