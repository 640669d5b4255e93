import { randomUUID } from 'node:crypto';
import { Logger } from '@nestjs/common';
import { writtenBefore } from './written.js';
import { writtenWords } from './fault.js';
import type { Metrics } from '../metrics/metrics.js';

const logger = new Logger('fault');

/** A fault is logged whole with an incident id, in the line that also names the request, and told as that id alone. */
export function maskFault(fault: unknown, metrics: Metrics, where: 'operation' | 'route' | 'job'): { message: string; incident: string } {
  const incident = randomUUID();
  metrics.faults.inc({ where });
  logger.error({ incident, err: fault instanceof Error ? fault : new Error(String(fault)) });
  return {
    message: `Something went wrong here, not with what you typed. ${writtenWords[writtenBefore(fault)]} Incident ${incident}.`,
    incident,
  };
}
