declare module 'bp3d' {
  class Item {
    constructor(name: string, width: number, height: number, depth: number, weight: number);
    readonly name: string;
    readonly position: readonly [number, number, number];
    getDimension(): readonly [number, number, number];
  }
  class Bin {
    constructor(name: string, width: number, height: number, depth: number, maxWeight: number);
    readonly items: readonly Item[];
  }
  interface Packer {
    addBin(bin: Bin): void;
    addItem(item: Item): void;
    pack(): void;
  }
  const packing: { Item: typeof Item; Bin: typeof Bin; Packer: new () => Packer };
  export default packing;
}

declare module 'bin-packing-3d' {
  class Item {
    constructor(name: string, width: number, height: number, depth: number, weight: number);
    readonly name: string;
    readonly position: readonly [number, number, number];
    get_dimension(): readonly [number, number, number];
  }
  class Bin {
    constructor(name: string, width: number, height: number, depth: number, maxWeight: number);
    readonly items: readonly Item[];
  }
  interface Packer {
    add_bin(bin: Bin): void;
    add_item(item: Item): void;
    pack(biggerFirst: boolean): void;
  }
  const packing: { Item: typeof Item; Bin: typeof Bin; Packer: new () => Packer };
  export default packing;
}

// Its own types name files without their ending, which NodeNext does not find.
declare module 'binpackingjs/3d' {
  /** In the order of the edges along x, y, z of the container; edges are named width, height, depth. */
  export enum RotationType {
    WHD = 0,
    HWD = 1,
    HDW = 2,
    DHW = 3,
    DWH = 4,
    WDH = 5,
  }
  interface Sized {
    readonly name: string;
    readonly width: number;
    readonly height: number;
    readonly depth: number;
  }
  interface PackedItem extends Sized {
    readonly position: readonly [number, number, number];
    readonly dimension: readonly [number, number, number];
  }
  export function pack3D(options: {
    readonly bins: readonly (Sized & { readonly maxWeight: number })[];
    readonly items: readonly (Sized & { readonly weight: number; readonly allowedRotations: readonly RotationType[] })[];
  }): { readonly packedBins: readonly { readonly items: readonly PackedItem[] }[] };
}
