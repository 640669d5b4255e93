import { GraphQLError } from 'graphql';
import type { BadInput } from '#kernel';
import type { Written } from './written.js';

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

/** What became of the write before the fault, in words. */
export const writtenWords: Readonly<Record<Written, string>> = {
  nothing: 'Nothing was saved.',
  saved: 'It was saved before that: look at it again.',
  open: 'Whether it was saved is not known yet.',
};

/** The database is down or on its way up. */
export class DatabaseAwayError extends GraphQLError {
  constructor(written: Written) {
    super(`The database does not answer just now. ${writtenWords[written]} It is started again by itself; try again in a few seconds.`, {
      extensions: { code: 'DATABASE_AWAY' },
    });
  }
}

/** Others wrote what this reads, each time that it was tried. */
export class BusyError extends GraphQLError {
  constructor(written: Written) {
    super(`Others were writing the same things at that moment. ${writtenWords[written]} Try again.`, { extensions: { code: 'BUSY' } });
  }
}

/** The server of the database has too little left of what it needs to write. */
export class NoRoomError extends GraphQLError {
  constructor(what: 'disk' | 'memory or connections', written: Written) {
    const sentence =
      what === 'disk'
        ? 'The disk of the database is full. Reading goes on; whoever runs the house has to make room on it.'
        : 'The database has no memory or no connection left just now. Try again in a moment.';
    super(`${sentence} ${writtenWords[written]}`, { extensions: { code: 'NO_ROOM' } });
  }
}
