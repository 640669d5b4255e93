/** A word for addresses, made of a name. */
export const idOf = (name: string, otherwise = 'tour'): string =>
  name
    .trim()
    .toLowerCase()
    .normalize('NFKD')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 60) || otherwise;

/** An id made of a name, and of a number where another has that. */
export function freeId(name: string, taken: readonly string[], otherwise = 'tour'): string {
  const id = idOf(name, otherwise);
  for (let number = 1; ; number++) {
    const tried = number === 1 ? id : `${id.slice(0, 56)}-${number}`;
    if (!taken.includes(tried)) return tried;
  }
}
