import type { BeamResult, HangResult, LegResult, PickKit, PickResult, PickRoom, PicksResult } from '../contract/index.js';
import { type StructurePoint, structurePoints } from './structure-points.js';

/** Hoist, chain and steel of one pick with its heights. */
export interface LiftedThere {
  readonly name: string;
  readonly hoist: string;
  readonly serial: string | null;
  readonly kit: PickKit | null;
  readonly room: PickRoom | null;
}

/** A point with all that the rigger of the house asks for. */
export interface PointFacts {
  readonly point: StructurePoint;
  readonly picks: readonly LiftedThere[];
  /** Of a leg of a bridle: its geometry, and the steel that makes it. */
  readonly leg: (LegResult & { readonly shackles: readonly string[]; readonly slings: readonly string[] }) | null;
  /** Steel of the line of a pull-back is on the page of its hang; its tension stands here. */
  readonly lineN: number | null;
  readonly beam: BeamResult | null;
  /** What the rigging system says of wind; null where none is on file. */
  readonly windLimitMps: number | null;
}

/** Every point of a show in the order of the list of points. */
export function pointFacts(picks: PicksResult): readonly PointFacts[] {
  return structurePoints(picks).map((point) => {
    const found = point.of.flatMap(({ hang, hole }) => {
      const result = picks.hangs.find((each) => each.hang === hang);
      return result ? [{ hang: result, pick: result.picks.find((each) => each.hole === hole) ?? null }] : [];
    });
    const limits = found.flatMap(({ hang }) => hang.windLimitMps ?? []);
    return {
      point,
      picks: found.flatMap(({ hang, pick }) => (pick ? [liftedAt(hang, pick)] : [])),
      leg: point.kind === 'leg' ? legOf(point, found[0]?.pick ?? null) : null,
      lineN: point.kind === 'anchor' ? (found[0]?.hang.pullBack?.figures?.tensionN ?? null) : null,
      beam: picks.site?.beams.find((each) => each.name === point.beam) ?? null,
      windLimitMps: limits.length < found.length || limits.length === 0 ? null : Math.min(...limits),
    };
  });
}

const liftedAt = (hang: HangResult, pick: PickResult): LiftedThere => ({
  name: `${hang.name}, hole ${pick.hole}`,
  hoist: pick.hoist,
  serial: pick.hoistSerial,
  kit: pick.kit ?? null,
  room: hang.room?.picks.find((each) => each.hole === pick.hole) ?? null,
});

function legOf({ point }: StructurePoint, pick: PickResult | null): PointFacts['leg'] {
  if (!pick?.bridle) return null;
  const index = pick.bridle.legs.findIndex((_, each) => point === `${pick.point}, leg ${each + 1}`);
  const leg = pick.bridle.legs[index];
  return leg ? { ...leg, ...(pick.kit?.legs[index] ?? { shackles: [], slings: [] }) } : null;
}
