import { useSearchParams } from 'react-router';
import type { RowWay, TruckResultOne } from '#pack-plan';

type Row = TruckResultOne['rows'][number];

interface WayWords {
  readonly name: string;
  /** Of a row that is done. */
  readonly done: string;
  /** In the outbox. */
  readonly told: string;
  readonly untold: string;
}

export const wayWords: Readonly<Record<RowWay, WayWords>> = {
  row: { name: 'Load', done: 'is in', told: 'loaded', untold: 'not loaded after all' },
  unload: { name: 'Unload', done: 'is off', told: 'taken off', untold: 'not taken off after all' },
  'load-out': { name: 'Load-out', done: 'is in', told: 'loaded for home', untold: 'not loaded for home after all' },
};

/** In which way the rows are worked: as they are loaded where nothing is said. */
export function useRowWay(): RowWay {
  const way = useSearchParams()[0].get('way');
  return way === 'unload' || way === 'load-out' ? way : 'row';
}

export const searchOf = (way: RowWay): string => (way === 'row' ? '' : `?way=${way}`);

/** Rows in the order in which they are worked: from the nose, from the door as the order of the show wants it, or as they go in first for home. */
export function rowsInOrder(truck: TruckResultOne, way: RowWay): readonly Row[] {
  if (way === 'row') return truck.rows;
  const order = way === 'unload' ? truck.unloadingOrder : (truck.loadOutOrder ?? truck.loadingOrder);
  const firstOf = new Map<Row, number>(truck.rows.map((row) => [row, Math.min(...row.pieces.map((id) => order.indexOf(id)))]));
  return [...truck.rows].sort((a, b) => (firstOf.get(a) ?? 0) - (firstOf.get(b) ?? 0));
}
