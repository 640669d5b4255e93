/** Roles as people say them. */
export const roleWords: Readonly<Record<string, string>> = { warehouse: 'warehouse', system: 'system tech', safety: 'safety officer' };
