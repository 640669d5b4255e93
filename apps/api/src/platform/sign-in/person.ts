export type Role = 'warehouse' | 'system' | 'safety';

/** Who asks: what guards and services may rely on. */
export interface SignedIn {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
}
