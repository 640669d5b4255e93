import { useState } from 'react';
import { useOutbox } from '../../platform/outbox/outbox.js';
import type { Sheet } from './use-count-sheet.js';

interface CountedLine {
  readonly key: string;
  readonly sent: number;
  readonly returned: number;
  readonly damaged: number;
  readonly lots: readonly { readonly lot: string; readonly lost: number; readonly unfit: number }[];
}

/** Counts of one show on their way to the house. */
export function useCounting({ tourId, showId, name }: Sheet) {
  const outbox = useOutbox();
  const [unkept, setUnkept] = useState<unknown>(null);
  const [isRecorded, setIsRecorded] = useState(false);
  const isOwn = (each: { kind: string; tourId: string; showId: string }) =>
    each.kind === 'count' && each.tourId === tourId && each.showId === showId;
  const waiting = outbox.waiting.filter(isOwn);
  const record = (showIds: readonly string[], lines: readonly CountedLine[], kept: () => void) => {
    const words = `${name}: counted ${lines.length} ${lines.length === 1 ? 'line' : 'lines'} at return`;
    outbox.put({ kind: 'count', values: { tourId, showIds, lines }, words, tourId, showId }).then(() => {
      setIsRecorded(true);
      kept();
    }, setUnkept);
  };
  return {
    record,
    unkept,
    /** Keys of the lines that the house does not have yet. */
    onTheirWay: new Set(waiting.flatMap(({ values }) => (values.lines as readonly CountedLine[]).map((each) => each.key))),
    /** The house has all that was recorded here. */
    isTaken: isRecorded && waiting.length === 0 && !outbox.notTaken.some(isOwn),
  };
}
