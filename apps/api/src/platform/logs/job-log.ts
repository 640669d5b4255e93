import { Inject, Injectable } from '@nestjs/common';
import type { Logger } from 'pino';
import { maskFault } from '../faults/mask-fault.js';
import { Metrics } from '../metrics/metrics.js';
import { LOGGER, logUnder } from './house-logger.js';

/** What is told of a fault that was logged here. */
const masked = new WeakMap<object, string>();

export const maskedBy = (fault: unknown): string | undefined => masked.get(fault as object);

/** Jobs in the log and in the metrics. */
@Injectable()
export class JobLog {
  constructor(
    @Inject(LOGGER) private readonly logger: Logger,
    private readonly metrics: Metrics,
  ) {}

  /**
   * Does a job: one line when it ends, its name in every line that is logged on the way, and an incident for a fault, which is thrown on.
   */
  run<T>(queue: string, id: string, work: () => Promise<T>): Promise<T> {
    const start = performance.now();
    const logger = this.logger.child({ job: `${queue} ${id}` });
    const end = (outcome: string): number => {
      const elapsed = performance.now() - start;
      this.metrics.jobSeconds.observe({ queue, outcome }, elapsed / 1000);
      return Math.round(elapsed);
    };
    return logUnder(logger, async () => {
      try {
        const result = await work();
        logger.info({ ms: end('done') }, 'done');
        return result;
      } catch (fault) {
        end('fault');
        masked.set(fault as object, maskFault(fault, this.metrics, 'job').message);
        throw fault;
      }
    });
  }
}
