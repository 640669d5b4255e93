import type { HangPart } from '#trade';
import type { HangClearance, HangResult } from '../contract/index.js';
import { type Place, type Prism, apartMm, ballOf, long, minus } from './apart.js';

interface Body {
  readonly part: HangPart;
  readonly prism: Prism;
  readonly ball: ReturnType<typeof ballOf>;
}

/** Where the tallest loaded cart of a hang stands when it rolls in: as high as it is, as wide across the hang, as deep along it. */
export interface RolledIn {
  readonly heightMm: number;
  readonly acrossMm: number;
  readonly alongMm: number;
  readonly boxDepthMm: number;
  readonly floorMm: number;
}

type Hung = Pick<HangResult, 'hang' | 'name' | 'outline' | 'stage' | 'room' | 'trimHeightMm'>;

/**
 * For every two hangs that have a place on the stage: how near they come at trim, and a cart that rolls in under one of them to the other or to its cart. Bodies
 * are the boxes, frames and grids as they are drawn, as wide as their models; chains, cable and what is slung beside them are not looked at.
 */
export function clearances(hangs: readonly Hung[], cartOf: (hang: string) => RolledIn | undefined): readonly HangClearance[] {
  const bodies = hangs.map((hang) => (hang.stage && hang.room ? bodiesOf(hang, cartOf(hang.hang)) : []));
  return hangs.flatMap((first, index) =>
    hangs.slice(index + 1).flatMap((second, more): HangClearance[] => {
      const near = nearest(bodies[index]!, bodies[index + 1 + more]!);
      return near ? [{ hang: first.hang, otherHang: second.hang, ...near }] : [];
    }),
  );
}

function nearest(a: readonly Body[], b: readonly Body[]): Omit<HangClearance, 'hang' | 'otherHang'> | undefined {
  const pairs = a
    .flatMap((one) =>
      b.map((other) => ({
        one,
        other,
        atLeast: long(minus(one.ball.centre, other.ball.centre)) - one.ball.radiusMm - other.ball.radiusMm,
      })),
    )
    .sort((p, q) => p.atLeast - q.atLeast);
  let found: Omit<HangClearance, 'hang' | 'otherHang'> | undefined;
  for (const { one, other, atLeast } of pairs) {
    if (found && atLeast > found.apartMm) break;
    const mm = apartMm(one.prism, other.prism);
    if (!found || mm < found.apartMm) found = { apartMm: mm, firstPart: one.part, secondPart: other.part };
  }
  return found;
}

function bodiesOf({ outline, stage, room, trimHeightMm }: Hung, cart: RolledIn | undefined): readonly Body[] {
  const turn = ((stage?.azimuthDeg ?? 0) * Math.PI) / 180;
  const upMm = trimHeightMm - (room?.markZMm ?? 0);
  const at = (xMm: number, yMm: number, zMm: number): Place => [
    (stage?.xMm ?? 0) + xMm * Math.cos(turn) - yMm * Math.sin(turn),
    (stage?.yMm ?? 0) + xMm * Math.sin(turn) + yMm * Math.cos(turn),
    zMm,
  ];
  const body = (part: HangPart, corners: readonly { xMm: number; zMm: number }[], widthMm: number, above = upMm): Body => {
    const side = corners.map(({ xMm, zMm }) => at(xMm, -widthMm / 2, zMm + above));
    const prism = { side, through: minus(at(0, widthMm, 0), at(0, 0, 0)) };
    return { part, prism, ball: ballOf(prism) };
  };
  const widest = Math.max(outline.gridWidthMm, ...outline.boxes.map((each) => each.widthMm));
  return [
    body({ code: 'grid' }, outline.grid, outline.gridWidthMm),
    ...outline.boxes.map(({ position, corners, widthMm }) => body({ code: 'box', position }, corners, widthMm)),
    ...outline.adapters.map(({ id, corners }) => body({ code: 'frame', id }, corners, widest)),
    ...(cart ? [body({ code: 'cart' }, footprint(cart), cart.acrossMm, cart.floorMm)] : []),
  ];
}

/** A cart stands with its middle under that of its boxes, whose fronts are in line with the front of the grid's joint. */
function footprint({ heightMm, alongMm, boxDepthMm }: RolledIn): readonly { xMm: number; zMm: number }[] {
  const [front, rear] = [(alongMm - boxDepthMm) / 2, -(alongMm + boxDepthMm) / 2];
  return [
    { xMm: front, zMm: heightMm },
    { xMm: front, zMm: 0 },
    { xMm: rear, zMm: 0 },
    { xMm: rear, zMm: heightMm },
  ];
}
