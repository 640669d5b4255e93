/** The value of a sum as it is written by hand: + - * /, brackets, sin and cos of degrees, sqrt. Throws on anything else. */
export function valueOf(written: string): number {
  const tokens = written.match(/\d+(?:\.\d+)?|sin|cos|sqrt|[-+*/()]/g) ?? [];
  if (tokens.join('') !== written.replace(/\s/g, '')) throw new Error(`no sum: ${written}`);
  let at = 0;
  const next = () => tokens[at++];
  const product = (): number => {
    let value = factor();
    while (tokens[at] === '*' || tokens[at] === '/') value = next() === '*' ? value * factor() : value / factor();
    return value;
  };
  const sum = (): number => {
    let value = product();
    while (tokens[at] === '+' || tokens[at] === '-') value = next() === '+' ? value + product() : value - product();
    return value;
  };
  const factor = (): number => {
    const token = next();
    if (token === '-') return -factor();
    if (token === '(') {
      const value = sum();
      if (next() !== ')') throw new Error(`a bracket stays open: ${written}`);
      return value;
    }
    if (token === 'sin') return Math.sin((factor() * Math.PI) / 180);
    if (token === 'cos') return Math.cos((factor() * Math.PI) / 180);
    if (token === 'sqrt') return Math.sqrt(factor());
    return Number(token);
  };
  const value = sum();
  if (at !== tokens.length || Number.isNaN(value)) throw new Error(`no sum: ${written}`);
  return value;
}
