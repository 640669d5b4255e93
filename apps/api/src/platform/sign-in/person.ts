export const roles = ['warehouse', 'system', 'safety'] as const;
export type Role = (typeof roles)[number];

/** Who asks: what guards and services may rely on. */
export interface SignedIn {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
}
