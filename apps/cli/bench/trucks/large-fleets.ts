/** A piece of a large fleet; millimetres and kilograms. */
export interface FleetPiece {
  readonly id: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly massKg: number;
  readonly mayTurn: boolean;
  readonly floorOnly: boolean;
  readonly maxOnTopKg: number;
  readonly firstOff: number;
}

export interface LargeFleet {
  readonly trucks: readonly object[];
  readonly pieces: readonly FleetPiece[];
  readonly minSupport: number;
}

const truck = { innerLengthMm: 13_600, innerWidthMm: 2480, innerHeightMm: 2700, payloadKg: 24_000, maxSideOffsetMm: 120 };
const semiTrailer = { kingpinXMm: 1200, axleGroupXMm: 8900, tareKingpinKg: 1900, tareAxleGroupKg: 5200, maxAxleGroupKg: 24_000 };

/** Carts and cases in six sizes, four stops; invented. */
export function largeFleet(pieces: number, trucks: number): LargeFleet {
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

/**
 * How many pieces a plain first fit loads, by floor length and payload alone: what comes off last first, rows of towers of one shape and one stop, in the turn that takes less
 * length a tower, row after row, truck after truck. It knows nothing of the search it is compared with.
 */
export function plainFirstFit({ trucks, pieces }: LargeFleet): number {
  const alike = new Map<string, FleetPiece[]>();
  for (const piece of [...pieces].sort((a, b) => b.firstOff - a.firstOff || b.heightMm - a.heightMm || b.lengthMm - a.lengthMm)) {
    const key = `${piece.firstOff} ${piece.heightMm} ${piece.lengthMm} ${piece.widthMm}`;
    alike.set(key, [...(alike.get(key) ?? []), piece]);
  }
  let [rode, at, endMm, massKg] = [0, 0, 0, 0];
  for (const shape of alike.values()) {
    const { depthMm, towers, high } = rowOf(shape[0] as FleetPiece);
    for (let from = 0; from < shape.length; from += towers * high) {
      const row = shape.slice(from, from + towers * high);
      const rowKg = row.reduce((sum, each) => sum + each.massKg, 0);
      if (endMm + depthMm > truck.innerLengthMm || massKg + rowKg > truck.payloadKg) [at, endMm, massKg] = [at + 1, 0, 0];
      if (at >= trucks.length) return rode;
      endMm += depthMm;
      massKg += rowKg;
      rode += row.length;
    }
  }
  return rode;
}

/** A row of one shape: how deep, how many towers abreast, how many pieces a tower. */
function rowOf({ lengthMm, widthMm, heightMm, massKg, floorOnly, maxOnTopKg }: FleetPiece) {
  const ways = [
    { depthMm: lengthMm, towers: Math.floor(truck.innerWidthMm / widthMm) },
    { depthMm: widthMm, towers: Math.floor(truck.innerWidthMm / lengthMm) },
  ];
  const best = ways.reduce((a, b) => (b.depthMm / b.towers < a.depthMm / a.towers ? b : a));
  const high = floorOnly ? 1 : Math.min(Math.floor(truck.innerHeightMm / heightMm), 1 + Math.floor(maxOnTopKg / massKg));
  return { ...best, high };
}
