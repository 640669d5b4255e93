import { lowestZMm, trimMarkZMm } from '#hang-statics';
import { type Hang, type Pick, type TourFile, legSteel } from '#tour-file';
import type { HangResult, LegRoom, PickRoom, RoomPiece, RoomResult } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';

/** Steel of a leg that differs from it by more than this does not make it (common practice, no published source). */
const legToleranceMm = 20;

/** Every height of a hang at trim: nothing is rounded and nothing negative is hidden. */
export function planRoom(inputs: PlanInputs, hang: Hang, outline: HangResult['outline']): RoomResult {
  const trimTo = hang.trimTo ?? 'grid';
  const markZMm = trimMarkZMm(outline, trimTo);
  const heightOf = (zMm: number) => hang.trimHeightMm + zMm - markZMm;
  return {
    trimTo,
    markZMm,
    lowestHeightMm: heightOf(lowestZMm(outline)),
    deckHeightMm: hang.deckHeightMm ?? 0,
    picks: hang.picks.map((pick) => {
      const holeZMm = outline.holes.find((each) => each.hole === pick.hole)!.at.zMm;
      return pickRoom(inputs, hang, pick, heightOf(holeZMm), holeZMm - markZMm);
    }),
    legs: hang.picks.flatMap((pick) => legRooms(inputs, pick)),
  };
}

function pickRoom(inputs: PlanInputs, hang: Hang, pick: Pick, holeHeightMm: number, gridMm: number): PickRoom {
  const { catalogue } = inputs.file;
  const hoist = modelOf(catalogue.hoists, pick.hoist);
  const shackles = piece('shackles', pick.shackles, (model) => modelOf(catalogue.shackles, model).insideMm);
  const slings = piece('slings', pick.slings, (model) => modelOf(catalogue.slings, model).lengthMm);
  const hooks = piece('hooks', [hoist.model], () => hoist.hooksMm);
  const body = piece('hoist body', [hoist.model], () => hoist.bodyMm);
  const bridleMm = pick.bridle ? Math.max(...pick.bridle.legs.map((each) => each.aboveMm)) : 0;
  const pointHeightMm = hang.pointHeightMm ?? null;
  const apexHeightMm = pointHeightMm === null ? null : pointHeightMm - bridleMm;
  const hookHeightMm = holeHeightMm + known(shackles) + known(slings);
  return {
    hole: pick.hole,
    holeHeightMm,
    hookHeightMm,
    pieces: [
      { part: 'grid', mm: gridMm, models: [], unmeasured: [] },
      shackles,
      slings,
      hooks,
      body,
      ...(pick.bridle ? [{ part: 'bridle' as const, mm: bridleMm, models: [], unmeasured: [] }] : []),
    ],
    pointHeightMm,
    apexHeightMm,
    leftMm: apexHeightMm === null ? null : apexHeightMm - hookHeightMm - known(hooks) - known(body),
    chainToFloorMm: apexHeightMm,
  };
}

/** Pieces of one kind end to end; what has no length on file counts as nothing and is named. */
function piece(part: RoomPiece['part'], models: readonly string[], lengthMm: (model: string) => number | undefined): RoomPiece {
  const unmeasured = [...new Set(models)].filter((each) => lengthMm(each) === undefined);
  const sumMm = models.reduce((sum, each) => sum + (lengthMm(each) ?? 0), 0);
  return { part, mm: unmeasured.length > 0 && sumMm === 0 ? null : sumMm, models: [...new Set(models)], unmeasured };
}

const known = ({ mm }: RoomPiece): number => mm ?? 0;

function legRooms({ file: { catalogue } }: PlanInputs, { hole, bridle }: Pick): LegRoom[] {
  if (!bridle) return [];
  const steel = legSteel(bridle);
  return bridle.legs.flatMap(({ xMm, yMm, aboveMm }, index): LegRoom[] => {
    const { shackles, slings } = steel[index]!;
    // What is planned without any steel is said of its line.
    if (shackles.length + slings.length === 0) return [];
    const bows = piece('shackles', shackles, (model) => modelOf(catalogue.shackles, model).insideMm);
    const own = slings.map((model) => modelOf(catalogue.slings, model));
    const longestMm = own.reduce((sum, each) => sum + each.lengthMm, known(bows));
    const shortestMm = own.reduce((sum, each) => sum + (each.shortestMm ?? each.lengthMm), known(bows));
    const lengthMm = Math.hypot(xMm, yMm, aboveMm);
    const fits = reaches(lengthMm, shortestMm, longestMm);
    return [
      {
        hole,
        leg: index + 1,
        lengthMm,
        shortestMm,
        longestMm,
        models: [...new Set([...slings, ...shackles])],
        unmeasured: bows.unmeasured,
        fits,
        ...(fits ? {} : { fromStock: stockFor(catalogue.slings, lengthMm, known(bows)) }),
      },
    ];
  });
}

const reaches = (lengthMm: number, shortestMm: number, longestMm: number): boolean =>
  lengthMm <= longestMm + legToleranceMm && lengthMm >= shortestMm - legToleranceMm;

/** One sling on file, or two, that make a leg with its shackles: the fewest, then the nearest; null where none do. */
function stockFor(slings: TourFile['catalogue']['slings'], lengthMm: number, bowsMm: number): NonNullable<LegRoom['fromStock']> | null {
  const one = slings.map((each) => [each]);
  const two = slings.flatMap((each, index) => slings.slice(index).map((other) => [each, other]));
  const made = [...one, ...two].map((own) => ({
    slings: own.map((each) => each.model),
    shortestMm: own.reduce((sum, each) => sum + (each.shortestMm ?? each.lengthMm), bowsMm),
    longestMm: own.reduce((sum, each) => sum + each.lengthMm, bowsMm),
  }));
  const off = (each: (typeof made)[number]) => Math.max(0, lengthMm - each.longestMm, each.shortestMm - lengthMm);
  return (
    made
      .filter((each) => reaches(lengthMm, each.shortestMm, each.longestMm))
      .sort((a, b) => a.slings.length - b.slings.length || off(a) - off(b))[0] ?? null
  );
}
