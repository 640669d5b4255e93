import { HttpException } from '@nestjs/common';
import type { Request } from 'express';
import { reportFileFault } from './file-kind.js';

export interface HandedIn {
  readonly type: string;
  readonly bytes: Buffer;
}

/** The file in the body of a request. Throws HttpException 415 where it is not what it says. */
export function handedIn(request: Request, what: 'report' | 'picture' | 'paper'): HandedIn {
  const [type = ''] = String(request.headers['content-type'] ?? '').split(';', 1);
  const fault = reportFileFault(type, request.body);
  if (fault) throw new HttpException({ message: `No ${what} was kept.`, faults: [fault] }, 415);
  return { type, bytes: request.body as Buffer };
}
