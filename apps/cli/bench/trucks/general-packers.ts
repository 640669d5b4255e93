import binPacking3d from 'bin-packing-3d';
import { pack3D, RotationType } from 'binpackingjs/3d';
import bp3d from 'bp3d';
import type { ContainerCase, ContainerPlacement } from '#truck-pack';

type Triple = readonly [number, number, number];

/**
 * Packing packages of the registry, on the same problems. Their axes are width along x, height up, depth along y. Only the first knows which edge may
 * stand vertical; the others turn every box as they like. None knows support.
 */
export const generalPackers: Record<string, (problem: ContainerCase) => ContainerPlacement[]> = {
  binpackingjs: ({ length, width, height, boxes }) => {
    const { packedBins } = pack3D({
      bins: [{ name: 'container', width: length, height, depth: width, maxWeight: 1e9 }],
      items: boxes.flatMap(({ edges: [l, w, h], mayStand, count }, box) => {
        const allowedRotations = mayStand.flatMap((may, up) => (may ? standing[up]! : []));
        return Array.from({ length: count }, () => ({ name: `${box}`, width: l, height: h, depth: w, weight: 1, allowedRotations }));
      }),
    });
    return packedBins.flatMap((bin) => bin.items.map((item) => placed(item.name, item.position, item.dimension)));
  },
  'bin-packing-3d': (problem) => {
    const bin = new binPacking3d.Bin('container', problem.length, problem.height, problem.width, 1e9);
    const packer = new binPacking3d.Packer();
    packer.add_bin(bin);
    for (const { box, edges } of eachBox(problem)) packer.add_item(new binPacking3d.Item(`${box}`, edges[0], edges[2], edges[1], 1));
    packer.pack(true);
    return bin.items.map((item) => placed(item.name, item.position, item.get_dimension()));
  },
  bp3d: (problem) => {
    const bin = new bp3d.Bin('container', problem.length, problem.height, problem.width, 1e9);
    const packer = new bp3d.Packer();
    packer.addBin(bin);
    for (const { box, edges } of eachBox(problem)) packer.addItem(new bp3d.Item(`${box}`, edges[0], edges[2], edges[1], 1));
    packer.pack();
    return bin.items.map((item) => placed(item.name, item.position, item.getDimension()));
  },
};

/** Rotations with the first, second or third edge up, where width, height, depth are the first, third and second edge. */
const standing = [
  [RotationType.HWD, RotationType.DWH],
  [RotationType.HDW, RotationType.WDH],
  [RotationType.WHD, RotationType.DHW],
];

const eachBox = ({ boxes }: ContainerCase) =>
  boxes.flatMap(({ edges, count }, box) => Array.from({ length: count }, () => ({ box, edges })));

const placed = (name: string, [x, z, y]: Triple, [dx, dz, dy]: Triple): ContainerPlacement => ({ box: Number(name), x, y, z, dx, dy, dz });
