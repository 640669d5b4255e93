/** A code as it was read or typed, and what it can stand for. */
export type CodeMatch =
  | { readonly is: 'one'; readonly id: string }
  | { readonly is: 'several'; readonly ids: readonly string[] }
  | { readonly is: 'none' };

/** What stands in a code: of an address its last part, as labels carry the address of the house. */
export function textOfCode(read: string): string {
  const text = read.trim();
  if (!/^https?:\/\//i.test(text)) return text;
  const path = text.replace(/[?#].*$/, '').replace(/\/+$/, '');
  const last = path.slice(path.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(last).trim();
  } catch {
    return last.trim();
  }
}

/**
 * Which of the known ids is meant: exactly so, else in other capitals, else with forgiveness: dashes, blanks, dots and leading zeros do not count
 * ("k006" is K-006). Where several could be meant, none is guessed.
 */
export function matchCode(read: string, known: Iterable<string>): CodeMatch {
  const text = textOfCode(read);
  if (text === '') return { is: 'none' };
  const ids = [...new Set(known)];
  for (const alike of [(id: string) => id, (id: string) => id.toLowerCase(), bare]) {
    const found = ids.filter((id) => alike(id) === alike(text));
    if (found.length === 1) return { is: 'one', id: found[0]! };
    if (found.length > 1) return { is: 'several', ids: found };
  }
  return { is: 'none' };
}

/** Letters in capitals and numbers without leading zeros, in their order; "K-006", "k6" and "K 06" are alike, "K1-1" and "K11" are not. */
function bare(text: string): string {
  const runs = text.toUpperCase().match(/\p{L}+|\d+/gu) ?? [];
  return runs.map((run) => (/^\d/.test(run) ? run.replace(/^0+(?=\d)/, '') : run)).join('|');
}
