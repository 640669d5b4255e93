import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { request, sendFile } from '../../platform/request.js';
import { type CsvImport, csvImportQuery } from './operations.js';
import { type SheetToImport, matched } from './sheet-to-import.js';

const lookEveryMs = 300;
const pause = (milliseconds: number): Promise<void> => new Promise((done) => setTimeout(done, milliseconds));

interface Run {
  /** Key of a sheet -> how it stands. */
  readonly of: ReadonlyMap<number, CsvImport>;
  readonly isGoing: boolean;
  readonly isDry: boolean;
  readonly fault: unknown;
}

const nothing: Run = { of: new Map(), isGoing: false, isDry: false, fault: null };

/** Sends sheets one after the other in the order given, each all or none; the first that does not come in ends it, and the ones after it are not begun. */
export function useImportRun() {
  const client = useQueryClient();
  const [run, setRun] = useState(nothing);
  const turn = useRef(0);

  const one = async (sheet: SheetToImport, isDry: boolean, mine: number): Promise<CsvImport | undefined> => {
    const path = `/api/imports/${sheet.kind}?dryRun=${isDry}`;
    const { id } = (await sendFile(path, new Blob([matched(sheet).csv]), 'text/csv')) as { id: string };
    for (;;) {
      const { csvImport } = await request(csvImportQuery, { id });
      if (turn.current !== mine) return undefined;
      setRun((now) => ({ ...now, of: new Map(now.of).set(sheet.key, csvImport) }));
      if (csvImport.state !== 'going') return csvImport;
      await pause(lookEveryMs);
    }
  };
  const start = async (sheets: readonly SheetToImport[], isDry: boolean): Promise<void> => {
    const mine = ++turn.current;
    setRun({ ...nothing, isGoing: true, isDry });
    let fault: unknown = null;
    try {
      for (const sheet of sheets) if ((await one(sheet, isDry, mine))?.state !== 'done') break;
    } catch (thrown) {
      fault = thrown;
    }
    if (turn.current !== mine) return;
    setRun((now) => ({ ...now, isGoing: false, fault }));
    await client.invalidateQueries();
  };
  return {
    ...run,
    start: (sheets: readonly SheetToImport[], isDry: boolean) => void start(sheets, isDry),
    reset: () => {
      turn.current++;
      setRun(nothing);
    },
  };
}
