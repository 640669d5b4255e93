import type { Role } from '../config/roles.js';
import type { Deputyship } from './deputyship.js';

export type { Role } from '../config/roles.js';

/** Who is written into a record: a person by id and name, or the program itself, which has no id. */
export interface Author {
  readonly name: string;
  readonly id?: string | null;
}

export const authorId = ({ id }: Author): string | null => id || null;

/** Who asks: what guards and services may rely on. */
export interface SignedIn {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  /** Has a password that another person gave, and may do no more than choose the own one. */
  readonly mustChange: boolean;
  readonly sessionId: string;
  /** Whose place this person takes today, as deputy of a safety officer. */
  readonly deputyships: readonly Deputyship[];
  /** Of whoever acts as deputy: the safety officer, by id, in whose place it is. */
  readonly deputyOf?: string;
}
