import { GraphQLError } from 'graphql';
import type { BadInput } from '#kernel';

/** Bad input: every fault with field, value and what would be right. */
export class BadInputError extends GraphQLError {
  constructor(readonly faults: readonly BadInput[]) {
    super(faults[0] ? `${faults[0].field}: found ${JSON.stringify(faults[0].value)}, wanted ${faults[0].wanted}` : 'bad input', {
      extensions: { code: 'BAD_INPUT', faults },
    });
  }
}

export class NotAllowedError extends GraphQLError {
  constructor(sentence: string) {
    super(sentence, { extensions: { code: 'NOT_ALLOWED' } });
  }
}

export class NotFoundError extends GraphQLError {
  constructor(what: string) {
    super(`${what} is not on file.`, { extensions: { code: 'NOT_FOUND' } });
  }
}

/** The connection to the database went away while it was saving: saved or not is not known here, and looked up by the request id. */
export class OutcomeUnknownError extends GraphQLError {
  constructor(cause: unknown) {
    super('The database went away while this was being saved. Whether it was saved is not known yet.', {
      extensions: { code: 'OUTCOME_UNKNOWN' },
      originalError: cause instanceof Error ? cause : null,
    });
  }
}

/** A statement that took longer than any may was stopped by the database, and with it whatever it was part of. */
export class TooLongError extends GraphQLError {
  constructor() {
    super('This took the database too long and was stopped. Nothing was saved; ask for less, or try again in a moment.', {
      extensions: { code: 'TOO_LONG' },
    });
  }
}
