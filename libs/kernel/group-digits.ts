/** Thousands apart by a narrow blank, a point for decimals, a real minus sign: 18 260.5. */
export function groupDigits(value: number, decimals = 0): string {
  const [whole, part] = Math.abs(value).toFixed(decimals).split('.') as [string, string | undefined];
  const text = whole.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f') + (part ? `.${part}` : '');
  return value < 0 && Number(text.replace(/\u202f/g, '')) !== 0 ? `\u2212${text}` : text;
}
