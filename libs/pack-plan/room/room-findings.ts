import type { HangSubject, ModelSubject, RoomFinding } from '#trade';
import type { HangResult, PicksResult } from '../contract/index.js';

type Roomy = Pick<HangResult, 'hang' | 'name' | 'trimHeightMm' | 'room'>;

/** Less than this is the rounding of the sum. */
const leastMm = 1e-6;

/** What does not fit between floor and points, with the figure that is missing; what nobody can tell because a length is not on file. */
export function roomFindings(hang: Roomy): RoomFinding[] {
  return [...noHeadroom(hang), ...notKnown(hang), ...belowFloor(hang), ...cartsIn(hang), ...legs(hang)];
}

/** Hangs that stand in one another, or nearer than the show wants them. */
export const clearanceFindings = ({ hangs, site }: PicksResult): RoomFinding[] =>
  (site?.clearances ?? []).flatMap(({ hang, otherHang, apartMm, ...parts }): RoomFinding[] => {
    const named = (id: string): HangSubject => ({ kind: 'hang', id, name: hangs.find((each) => each.hang === id)?.name ?? id });
    const subjects = { first: named(hang), second: named(otherHang) };
    if (apartMm < -leastMm) return [{ code: 'hangs-touch', subjects, numbers: { overlapMm: -apartMm }, date: null, ...parts }];
    const wanted = site?.leastApartMm ?? 0;
    return apartMm < wanted - leastMm
      ? [{ code: 'hangs-too-close', subjects, numbers: { apartMm, leastMm: wanted }, date: null, ...parts }]
      : [];
  });

/** The cart that has least room, where one has none. */
function cartsIn(hang: Roomy): RoomFinding[] {
  const all = hang.room?.rollIns ?? [];
  if (all.length === 0) return [];
  const { load, leftMm, freeMm, cartMm } = all.reduce((a, b) => (b.leftMm < a.leftMm ? b : a));
  if (leftMm >= -leastMm) return [];
  return [{ code: 'no-room-for-cart', subjects: { hang: hangOf(hang) }, numbers: { leftMm, freeMm, cartMm }, date: null, load }];
}

const pickOf = ({ hang, name }: Roomy, hole: string) => ({ kind: 'pick', hang, name, hole }) as const;
const hangOf = ({ hang, name }: Roomy): HangSubject => ({ kind: 'hang', id: hang, name });
const modelsOf = (names: readonly string[]): readonly ModelSubject[] => [...new Set(names)].map((id) => ({ kind: 'model', id }));

const noHeadroom = (hang: Roomy): RoomFinding[] =>
  (hang.room?.picks ?? []).flatMap(({ hole, leftMm, pointHeightMm, pieces }): RoomFinding[] =>
    leftMm === null || leftMm >= -leastMm
      ? []
      : [
          {
            code: 'no-headroom',
            subjects: { pick: pickOf(hang, hole) },
            numbers: { leftMm, pointHeightMm: pointHeightMm!, trimHeightMm: hang.trimHeightMm },
            date: null,
            trimTo: hang.room!.trimTo,
            parts: pieces.map(({ part, mm }) => ({ part, mm })),
          },
        ],
  );

function notKnown(hang: Roomy): RoomFinding[] {
  const picks = hang.room?.picks ?? [];
  const unmeasured = picks.flatMap((each) => each.pieces.flatMap((one) => one.unmeasured));
  if (unmeasured.length === 0) return [];
  const left = picks.map((each) => each.leftMm);
  const atMostMm = left.includes(null) ? null : Math.min(...left.map((each) => each!));
  return [
    { code: 'headroom-not-known', subjects: { hang: hangOf(hang), models: modelsOf(unmeasured) }, numbers: { atMostMm }, date: null },
  ];
}

function belowFloor(hang: Roomy): RoomFinding[] {
  if (!hang.room) return [];
  const { lowestHeightMm: lowestMm, deckHeightMm } = hang.room;
  const clearanceMm = lowestMm - deckHeightMm;
  if (clearanceMm >= -leastMm) return [];
  const numbers = { clearanceMm, lowestMm, deckHeightMm, trimHeightMm: hang.trimHeightMm };
  return [{ code: 'below-floor', subjects: { hang: hangOf(hang) }, numbers, date: null }];
}

const legs = (hang: Roomy): RoomFinding[] =>
  (hang.room?.legs ?? [])
    .filter((each) => !each.fits)
    .map(({ hole, leg, lengthMm, shortestMm, longestMm, models, unmeasured, fromStock }) => ({
      code: 'leg-does-not-fit',
      subjects: { pick: pickOf(hang, hole), models: modelsOf(models), unmeasured: modelsOf(unmeasured) },
      numbers: { leg, lengthMm, shortestMm, longestMm },
      date: null,
      fromStock: fromStock ?? null,
    }));
