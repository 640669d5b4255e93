/** What is wider than its place and is moved under it: also by the arrow keys, for which it takes the focus. */
export const scrolls = { className: 'scroll', tabIndex: 0 } as const;
export const scrollsWide = { className: 'wide', tabIndex: 0 } as const;
