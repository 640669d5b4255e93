import { setTimeout as pause } from 'node:timers/promises';
import { Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { databaseErrorOf } from './database-error.js';

/** What a unit of work gives back: `ok` false is a refusal, and rolls back what was written. */
export type Outcome<T, R> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: R };

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
 * work that locks every row it decides on, in one order.
 */
@Injectable()
export class UnitOfWork {
  constructor(private readonly dataSource: DataSource) {}

  async run<T, R = never>(
    work: (manager: EntityManager) => Promise<Outcome<T, R>>,
    isolation: 'SERIALIZABLE' | 'READ COMMITTED' = 'SERIALIZABLE',
  ): Promise<Outcome<T, R>> {
    for (let attempt = 1; ; attempt++) {
      try {
        return await this.dataSource.transaction(isolation, async (manager) => {
          const outcome = await work(manager);
          if (!outcome.ok) throw new RolledBack(outcome.error);
          return outcome;
        });
      } catch (fault) {
        if (fault instanceof RolledBack) return { ok: false, error: fault.refusal as R };
        if (attempt >= attempts || !tryAgain.has(databaseErrorOf(fault)?.code ?? '')) throw fault;
        await pause(Math.random() * Math.min(400, 5 * 2 ** attempt));
      }
    }
  }
}
