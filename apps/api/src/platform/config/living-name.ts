/** The name of the connection that every living API and worker holds: their number is counted by it. */
export const livingName = 'cartwright live';
