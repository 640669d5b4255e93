import { useState } from 'react';
import type { HangBox } from '#tour-file';
import { readPastedRows } from './paste-rows.js';

/** Rows of a spreadsheet in place of the boxes; nothing is used while a row is wrong. */
export function PasteRows({ boxes, onUse }: { boxes: readonly HangBox[]; onUse: (boxes: HangBox[]) => void }) {
  const [pasted, setPasted] = useState('');
  const rows = readPastedRows(pasted, boxes);
  const wrong = rows.filter((row) => row.said !== null);
  const use = () => {
    onUse(rows.flatMap((row) => (row.box ? [row.box] : [])));
    setPasted('');
  };
  return (
    <details>
      <summary>Paste rows from a spreadsheet</summary>
      <label>
        Position, model, splay, and perhaps a serial, a row each; or the angles alone, from the top
        <textarea
          rows={6}
          value={pasted}
          onChange={(event) => setPasted(event.target.value)}
          placeholder={'1\tPlover\t0.5\n2\tPlover\t1'}
        />
      </label>
      {wrong.map((row) => (
        <p key={row.line} className="said">
          ◐ line {row.line}: {row.said}
        </p>
      ))}
      <button type="button" disabled={rows.length === 0 || wrong.length > 0} onClick={use}>
        Use these {rows.length} boxes
      </button>
    </details>
  );
}
