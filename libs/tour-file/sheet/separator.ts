export type Separator = ',' | ';' | '\t' | '|';

const separators: readonly Separator[] = [',', ';', '\t', '|'];

/**
 * What stands between the cells: the sign that the heading has most of outside quotes. Lists inside cells have signs of their own, the heading has hardly
 * any; a file of one column has none, which a comma reads as well.
 */
export function separatorOf(text: string): Separator {
  const counts = new Map<string, number>(separators.map((each) => [each, 0]));
  let quoted = false;
  let begun = false;
  for (const sign of text) {
    if (sign === '"') quoted = !quoted;
    else if (!quoted && (sign === '\n' || sign === '\r')) {
      if (begun) break;
    } else if (!quoted && counts.has(sign)) counts.set(sign, (counts.get(sign) ?? 0) + 1);
    if (sign.trim() !== '' && sign !== '\uFEFF') begun = true;
  }
  return [...separators].sort((a, b) => (counts.get(b) ?? 0) - (counts.get(a) ?? 0))[0] ?? ',';
}
