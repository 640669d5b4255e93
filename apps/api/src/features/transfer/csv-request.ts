import { HttpException } from '@nestjs/common';
import type { Request } from 'express';
import { unseenIn, wantedSeen } from '#kernel';

/** Why the safety officer lets more pass than before: kept with the edition. */
export function reasonOf(reason: unknown): string {
  const text = typeof reason === 'string' ? reason.trim().slice(0, 300) : '';
  const unseen = unseenIn(text);
  if (unseen === undefined) return text;
  throw new HttpException(
    { message: 'Nothing was imported.', faults: [{ row: 1, column: 'reason', value: text.slice(0, 80), wanted: wantedSeen(unseen) }] },
    422,
  );
}

export function bodyOf(request: Request): Buffer {
  if (Buffer.isBuffer(request.body)) return request.body;
  const value = String(request.headers['content-type'] ?? '');
  throw new HttpException(
    { message: 'Nothing was imported.', faults: [{ row: 1, column: '', value, wanted: 'a CSV file, sent as text/csv' }] },
    415,
  );
}

export function known<T>(kind: T | undefined, text: string): T {
  if (kind === undefined) throw new HttpException({ message: `There is no kind called ${text.slice(0, 40)}.` }, 404);
  return kind;
}
