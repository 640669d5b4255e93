import { answer } from '../../engine/truck-pack.js';
import { numberFrom, readArguments, say } from '../arguments.js';

/** Large fleets as case files: each is answered within 1.5 times the seconds given, with something in its trucks: [--seconds S] [--pieces 500,2000,5000] [--trucks N]. */
export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const seconds = numberFrom(values, 'seconds', 3);
  const trucks = numberFrom(values, 'trucks', 8);
  const sizes = (values.get('pieces') ?? '500,2000,5000').split(',').map(Number);
  const rows = sizes.map((pieces) => {
    const problem = fleet(trucks, pieces);
    const start = performance.now();
    const said = answer(problem, { seconds, work: undefined });
    const took = (performance.now() - start) / 1000;
    const leftOver = said.ok ? (said.value as { readonly leftOver: readonly unknown[] }).leftOver.length : pieces;
    const row = { pieces, seconds: Number(took.toFixed(2)), rode: pieces - leftOver, isInTime: took <= 1.5 * seconds };
    say(JSON.stringify(row));
    return row;
  });
  say(JSON.stringify({ given: seconds, trucks, rows }));
  return rows.every((each) => each.isInTime && each.rode > 0) ? 0 : 1;
}

/** More freight than fits, in six sizes, four stops. */
function fleet(trucks: number, pieces: number): object {
  const truck = { innerLengthMm: 13_600, innerWidthMm: 2480, innerHeightMm: 2700, payloadKg: 24_000, maxSideOffsetMm: 120 };
  const semiTrailer = { kingpinXMm: 1200, axleGroupXMm: 8900, tareKingpinKg: 1900, tareAxleGroupKg: 5200, maxAxleGroupKg: 24_000 };
  const shape = (index: number) => ({ lengthMm: 1150 + 10 * (index % 6), widthMm: 720, heightMm: index % 3 === 0 ? 1540 : 900 });
  return {
    trucks: Array.from({ length: trucks }, (_, index) => ({ id: `T${index}`, ...truck, semiTrailer })),
    pieces: Array.from({ length: pieces }, (_, index) => ({
      id: `P${index}`,
      ...shape(index),
      massKg: 150 + (index % 5),
      mayTurn: true,
      floorOnly: index % 3 === 0,
      maxOnTopKg: index % 3 === 0 ? 0 : 400,
      firstOff: index % 4,
    })),
    minSupport: 0.8,
  };
}
