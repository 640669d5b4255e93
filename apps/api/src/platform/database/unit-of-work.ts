import { setTimeout as pause } from 'node:timers/promises';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager, QueryFailedError } from 'typeorm';
import { type Result, ok, refuse } from '#kernel';
import { CLOCK, type Clock } from '../config/config.js';
import { OutcomeUnknownError } from '../faults/fault.js';
import { claimRequest, keepAnswer } from '../request-once/claim.js';
import { type CurrentRequest, currentRequest } from '../request-once/current-request.js';
import { databaseErrorOf } from '../faults/database-error.js';

export type Isolation = 'SERIALIZABLE' | 'READ COMMITTED';

class RolledBack extends Error {
  constructor(readonly refusal: unknown) {
    super('rolled back');
  }
}

/** 40001 serialization failure, 40P01 deadlock: the whole transaction is tried again. */
const tryAgain = new Set(['40001', '40P01']);

/** How often a transaction that others got in the way of is tried. */
const attempts = 12;

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
  ) {}

  async run<T, R = never>(
    work: (manager: EntityManager) => Promise<Result<T, R>>,
    isolation: Isolation = 'SERIALIZABLE',
  ): Promise<Result<T, R>> {
    const request = currentRequest();
    for (let attempt = 1; ; attempt++) {
      const state = { isWorkDone: false };
      try {
        const outcome = await this.once(work, isolation, request, state);
        if (request) request.step++;
        return outcome;
      } catch (fault) {
        if (fault instanceof RolledBack) return refuse(fault.refusal as R);
        const isLost = isConnectionLost(fault);
        // The answer to a commit that was lost on the way is only known where the id can be asked for.
        if (isLost && state.isWorkDone && !request) throw new OutcomeUnknownError(fault);
        if (!isLost && !tryAgain.has(databaseErrorOf(fault)?.code ?? '')) throw fault;
        if (attempt >= attempts) throw isLost && state.isWorkDone ? new OutcomeUnknownError(fault) : fault;
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
      if (claim) await keepAnswer(manager, claim.place, outcome.value);
      state.isWorkDone = true;
      return outcome;
    });
  }
}

/** No SQLSTATE (the socket ended), class 08 (connection exception), 57P01 to 57P03 (the server goes down, crashed, or is not up yet). */
function isConnectionLost(fault: unknown): boolean {
  const driverFault =
    fault instanceof QueryFailedError ? (fault.driverError as { code?: string }) : (fault as { code?: string } | undefined);
  const code = driverFault?.code;
  if (code === undefined) return fault instanceof QueryFailedError;
  return /^(08...|57P0[123]|ECONNREFUSED|ECONNRESET|EPIPE)$/.test(code);
}
