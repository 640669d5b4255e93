import type { HangBox } from '#tour-file';

export interface PastedRow {
  readonly line: number;
  readonly text: string;
  readonly box: HangBox | null;
  readonly said: string | null;
}

/**
 * Rows copied from a spreadsheet: position, model, splay, and where one is wanted a serial; tab, semicolon or comma between them.
 * A heading is passed over; positions must run 1, 2, 3 ... from the top. Angles alone, one a line, go to the boxes that are there.
 */
export function readPastedRows(text: string, boxes: readonly HangBox[] = []): readonly PastedRow[] {
  const lines = text
    .split(/\r?\n/)
    .map((line, index) => ({ line: index + 1, text: line.trim() }))
    .filter((each) => each.text !== '');
  if (lines.length > 0 && lines.every((each) => angle.test(each.text))) return readAngles(lines, boxes);
  const rows = lines[0] && !/^\d/.test(lines[0].text) ? lines.slice(1) : lines;
  return rows.map((row, index) => readRow(row, index + 1));
}

const angle = /^-?\d+(?:[.,]\d+)?\s*°?$/;

function readAngles(lines: readonly { readonly line: number; readonly text: string }[], boxes: readonly HangBox[]): PastedRow[] {
  const wanted = `${boxes.length} angles, one for each box of the hang, or rows with position, model and splay`;
  return lines.map(({ line, text }, index) => {
    const box = boxes[index];
    const said = lines.length === boxes.length && box ? null : `${lines.length} angles: wanted ${wanted}`;
    const splayDeg = Number(text.replace('°', '').trim().replace(',', '.'));
    return { line, text, box: said === null && box ? { ...box, splayDeg } : null, said };
  });
}

function readRow({ line, text }: { line: number; text: string }, expected: number): PastedRow {
  const wrong = (said: string): PastedRow => ({ line, text, box: null, said });
  const cells = (text.includes('\t') ? text.split('\t') : text.includes(';') ? text.split(';') : text.split(',')).map((each) =>
    each.trim(),
  );
  const [position, model, splay, serial, ...rest] = cells;
  if (rest.some((each) => each !== '')) return wrong(`${cells.length} cells: wanted position, model, splay and perhaps a serial`);
  if (Number(position) !== expected)
    return wrong(`position ${position || 'missing'}: wanted ${expected}, positions run from the top without a gap`);
  if (!model) return wrong('no model: wanted the name of a box model');
  const splayDeg = Number((splay ?? '').replace('°', '').replace(',', '.'));
  if (!splay || !Number.isFinite(splayDeg)) return wrong(`splay ${splay || 'missing'}: wanted degrees, such as 0.5`);
  return { line, text, box: { model, splayDeg, ...(serial ? { serial } : {}) }, said: null };
}
