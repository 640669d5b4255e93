import type { Response } from 'express';

/** What the door says no to, in the words of an operation and of a plain route alike. */
export function answerRefused(response: Response, status: number, code: string, message: string): void {
  response.status(status).json({ message, errors: [{ message, extensions: { code } }] });
}
