import JsBarcode from 'jsbarcode';
import { correction, generate } from 'lean-qr';
import { type Node, node } from '../tree/index.js';

/** Modules of a Code 128 symbol (ISO/IEC 15417), bar 1 and space 0, without quiet zones; null where a character cannot be written in it. `isGs1`: FNC1 after the start. */
export function code128Modules(text: string, isGs1 = false): string | null {
  const made: { encodings?: { readonly data: string }[] } = {};
  try {
    // The library draws into a plain object as well; its types know elements of a page alone.
    JsBarcode(made, text, { format: 'CODE128', ean128: isGs1 });
  } catch {
    return null;
  }
  return made.encodings?.map((each) => each.data).join('') ?? null;
}

/** Millimetres. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Quiet zones on both sides, modules. */
const quiet = 10;

/** Bars that fill an area, quiet zones in it; with the width of a module. */
export function drawBars(modules: string, { x, y, width, height }: Area): { readonly drawn: Node; readonly moduleMm: number } {
  const moduleMm = width / (modules.length + 2 * quiet);
  const bars = [...modules.matchAll(/1+/g)].map(
    ({ index, 0: bar }) =>
      `M${at(x + (quiet + index) * moduleMm)},${at(y)}h${at(bar.length * moduleMm)}v${at(height)}h${at(-bar.length * moduleMm)}z`,
  );
  return { drawn: node('path', { d: bars.join(''), class: 'ink' }), moduleMm };
}

/** A QR code (ISO/IEC 18004, error correction at least M) in a square, its quiet zone of four modules in it. */
export function drawSquare(text: string, x: number, y: number, side: number): { readonly drawn: Node; readonly moduleMm: number } {
  const code = generate(text, { minCorrectionLevel: correction.M });
  const moduleMm = side / (code.size + 8);
  const cells: string[] = [];
  for (let row = 0; row < code.size; row++)
    for (let column = 0; column < code.size; column++)
      if (code.get(column, row))
        cells.push(`M${at(x + (column + 4) * moduleMm)},${at(y + (row + 4) * moduleMm)}h${at(moduleMm)}v${at(moduleMm)}h${at(-moduleMm)}z`);
  return { drawn: node('path', { d: cells.join(''), class: 'ink' }), moduleMm };
}

const at = (mm: number): number => Math.round(mm * 1000) / 1000;
