import { generate } from 'lean-qr';
import { type Node, node } from '../tree/index.js';

/** A QR code (ISO/IEC 18004) of a short text, with its quiet zone of four modules. */
export function drawCode(text: string): Node {
  const code = generate(text);
  const cells: string[] = [];
  for (let y = 0; y < code.size; y++) for (let x = 0; x < code.size; x++) if (code.get(x, y)) cells.push(`M${x + 4},${y + 4}h1v1h-1z`);
  const size = code.size + 8;
  return node(
    'svg',
    { viewBox: `0 0 ${size} ${size}`, width: 96, height: 96, role: 'img', 'aria-label': `Code of ${text}` },
    node('path', { d: cells.join(''), fill: '#000' }),
  );
}
