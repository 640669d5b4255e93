import { createHash } from 'node:crypto';
import { type CallHandler, type ExecutionContext, Injectable, type NestInterceptor } from '@nestjs/common';
import { GqlExecutionContext } from '@nestjs/graphql';
import type { Request } from 'express';
import { type GraphQLResolveInfo, OperationTypeNode } from 'graphql';
import { Observable, catchError, finalize } from 'rxjs';
import { insideAct } from '../acts/current-act.js';
import { BadInputError } from '../faults/fault.js';
import type { SignedIn } from '../sign-in/person.js';
import { type CurrentRequest, insideRequest } from './current-request.js';
import { type Written, noteFault, whileCounting } from '../faults/written.js';

interface Write {
  readonly request: Request & { signedIn?: SignedIn };
  readonly operation: string;
  readonly values: unknown;
}

/** Gives every write its id: the header `Idempotency-Key` (IETF draft-ietf-httpapi-idempotency-key-header), made on the client. */
@Injectable()
export class RequestOnce implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const account: { written: Written } = { written: 'nothing' };
    return new Observable((subscriber) =>
      whileCounting(account, () =>
        this.once(context, next)
          .pipe(
            catchError((fault: unknown) => {
              noteFault(fault, account.written);
              throw fault;
            }),
          )
          .subscribe(subscriber),
      ),
    );
  }

  private once(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const write = writeOf(context);
    const id = write && keyOf(write.request);
    if (!write) return next.handle();
    const act = { who: write.request.signedIn, via: write.operation.split('?')[0] ?? '' };
    if (id === undefined || !write.request.signedIn)
      return new Observable((subscriber) => insideAct(act, () => next.handle().subscribe(subscriber)));
    const current: CurrentRequest = {
      id,
      personId: write.request.signedIn.id,
      operation: write.operation,
      valuesHash: createHash('sha256')
        .update(Buffer.isBuffer(write.values) ? write.values : canonical(write.values))
        .digest('hex'),
      doneAt: doneAtOf(write.request),
      step: 0,
      isAnswered: false,
    };
    return new Observable((subscriber) =>
      insideAct(act, () =>
        insideRequest(current, () =>
          next
            .handle()
            .pipe(finalize(() => (current.isAnswered = true)))
            .subscribe(subscriber),
        ),
      ),
    );
  }
}

/** The write that is called for; undefined for what only reads. */
function writeOf(context: ExecutionContext): Write | undefined {
  if (context.getType<string>() !== 'graphql') {
    const request = context.switchToHttp().getRequest<Request>();
    if (request.method === 'GET' || request.method === 'HEAD') return undefined;
    return { request, operation: `${request.method} ${request.originalUrl}`, values: (request.body as unknown) ?? null };
  }
  const call = GqlExecutionContext.create(context);
  const info = call.getInfo<GraphQLResolveInfo>();
  if (info.operation.operation !== OperationTypeNode.MUTATION) return undefined;
  const { req: request } = call.getContext<{ req: Request }>();
  const { selections } = info.operation.selectionSet;
  if (request.headers['idempotency-key'] !== undefined && (selections.length > 1 || !('arguments' in selections[0]!)))
    throw new BadInputError([{ field: 'Idempotency-Key', value: info.fieldName, wanted: 'one write for each request id' }]);
  return { request, operation: info.fieldName, values: call.getArgs<unknown>() };
}

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

/** The draft writes it as a structured string, in quotes; bare is read as well. */
function keyOf(request: Request): string | undefined {
  const said = request.headers['idempotency-key'];
  if (said === undefined) return undefined;
  const text = String(said).trim();
  const key = text.startsWith('"') && text.endsWith('"') ? text.slice(1, -1) : text;
  if (!uuid.test(key)) throw new BadInputError([{ field: 'Idempotency-Key', value: text.slice(0, 80), wanted: 'a UUID (RFC 9562)' }]);
  return key.toLowerCase();
}

/** When the device says that it was done; for the record only, nothing is decided by it. */
function doneAtOf(request: Request): Date | null {
  const said = new Date(String(request.headers['x-done-at'] ?? ''));
  return Number.isNaN(said.getTime()) || said.getUTCFullYear() < 2000 || said.getUTCFullYear() > 2200 ? null : said;
}

/** Equal values give equal text, in whatever order their fields came. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, each: unknown) =>
    each !== null && typeof each === 'object' && !Array.isArray(each)
      ? Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : 1)))
      : each,
  );
}
