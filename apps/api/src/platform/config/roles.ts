export const roles = ['warehouse', 'system', 'safety'] as const;
export type Role = (typeof roles)[number];
