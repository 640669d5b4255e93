import { checkDigit, gs1Key, labelSheets, labelStocks } from './index.js';
import { code128Modules } from './symbols.js';
import { renderMarkup } from '../tree/index.js';

/** Symbols of eleven modules; the last before the stop is the check symbol. */
const symbolsOf = (modules: string): string[] => modules.match(/.{11}/g) ?? [];
/** The symbol of a value below 95, read off the library where that character is encoded alone. */
const symbolOf = (value: number): string => symbolsOf(code128Modules(String.fromCharCode(32 + value))!)[1]!;

/** Start symbols, ISO/IEC 15417. */
const startOf: Record<string, string> = { '11010000100': 'A', '11010010000': 'B', '11010011100': 'C' };

describe('codes of labels', () => {
  // Check values published by four independent descriptions of ISO/IEC 15417, with the start symbol they are for: A is 103, B 104, C 105. The sum is
  // (start + position x value) mod 103, so that the same characters after start B have one more than after start A.
  it.each([
    ['PJJ123C', 'A', 54],
    ['ABCDEF', 'A', 42],
    ['345678', 'C', 73],
    ['HI345678', 'A', 67],
  ])('Code 128 of %s ends with the published check value (after start %s: %i)', (text, start, check) => {
    const symbols = symbolsOf(code128Modules(text)!);
    const own = startOf[symbols[0]!]!;
    expect(symbols.at(-2)).toBe(symbolOf((check + own.charCodeAt(0) - start.charCodeAt(0)) % 103));
  });

  it('what Code 128 cannot write has no bars', () => expect(code128Modules('Käfer 7')).toBeNull());

  // GS1 check digits as published by GS1 India, and of a trade item number.
  it.each([
    ['890400021003', 7],
    ['03600024145', 7],
    ['061414112345', 2],
  ])('the check digit of %s is %i', (digits, digit) => expect(checkDigit(digits)).toBe(digit));

  it('keys: a returnable asset has prefix, type, check digit and serial; an individual one has prefix and serial', () => {
    expect(gs1Key('0614141', 'returnable', '400', '12345')).toBe('800300614141123452400');
    expect(gs1Key('0614141', 'individual', '12345400')).toBe('8004061414112345400');
    expect(gs1Key('0614141', 'individual', 'Ü 12')).toBe('8004061414112');
  });
});

describe('sheets of labels', () => {
  const items = Array.from({ length: 9 }, (_, index) => ({ id: `K-00${index + 1}`, kind: 'cart', model: 'Cart of four', faces: 2 }));

  it.each(labelStocks.map((each) => [each.id, each] as const))('%s: no label leaves its page, none is left out', (_, stock) => {
    const pages = labelSheets(items, { stock, house: 'http://house.example:4310', skip: 3 });
    const markup = pages.map(renderMarkup);
    expect(markup.join('').match(/class="serial"/g)).toHaveLength(18);
    expect(pages).toHaveLength(Math.ceil(((3 % (stock.columns * stock.rows)) + 18) / (stock.columns * stock.rows)));
    expect(stock.first.x).toBeGreaterThanOrEqual(0);
    expect(stock.first.x + (stock.columns - 1) * stock.step.x + stock.label.width).toBeLessThanOrEqual(stock.page.width + 1e-9);
    expect(stock.first.y + (stock.rows - 1) * stock.step.y + stock.label.height).toBeLessThanOrEqual(stock.page.height + 1e-9);
  });
});
