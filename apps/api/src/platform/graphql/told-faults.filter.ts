import { type ArgumentsHost, Catch, type ExceptionFilter } from '@nestjs/common';
import type { Response } from 'express';
import { GraphQLError } from 'graphql';

const statusOf: Record<string, number> = { NOT_FOUND: 404, NOT_ALLOWED: 403, NOT_SIGNED_IN: 401, BAD_INPUT: 422 };

/** What is told to the caller is no fault of ours: it is not logged, and plain routes get the same words with a status. */
@Catch(GraphQLError)
export class ToldFaultsFilter implements ExceptionFilter<GraphQLError> {
  catch(fault: GraphQLError, host: ArgumentsHost): GraphQLError | undefined {
    if (host.getType<string>() === 'graphql') return fault;
    const response = host.switchToHttp().getResponse<Response>();
    response.status(statusOf[String(fault.extensions.code)] ?? 400).json({ message: fault.message, faults: fault.extensions.faults ?? [] });
    return undefined;
  }
}
