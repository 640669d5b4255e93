import type { GroupSubject, ItemSubject, LoadingWish, TruckFinding } from '#trade';
import type { LoadingNote, TruckResult, TruckResultOne } from '../contract/index.js';

/** Share of a limit from which an axle is called nearly over. */
const nearly = 0.93;

/** What is left over, which rules what stays breaks, which wishes have no effect, which axles carry too much. */
export const truckFindings = (truck: TruckResult): TruckFinding[] => [
  ...(truck.refused ?? []).flatMap(({ piece, name, fact }): TruckFinding[] =>
    fact
      ? [
          {
            code: 'kept-breaks-rule',
            subjects: { piece: { kind: 'piece', id: piece, name: name ?? piece } },
            numbers: {},
            date: null,
            breach: fact,
          },
        ]
      : [],
  ),
  ...truck.leftOver.map(
    ({ id, label, reason, fact }): TruckFinding => ({
      code: 'left-over',
      subjects: { piece: { kind: 'piece', id, name: label } },
      numbers: {},
      date: null,
      why: fact ?? { code: 'engine-says', says: reason },
    }),
  ),
  ...(truck.notes ?? []).flatMap(noteFindings),
  ...truck.trucks.flatMap(loadFindings),
];

const aboutWish = (wish: LoadingWish): ItemSubject | GroupSubject =>
  'group' in wish ? { kind: 'group', name: wish.group } : { kind: 'item', id: 'piece' in wish ? wish.piece : wish.truck };

/** Waivers, and wishes that could not be taken up; what was taken up is no news. */
function noteFindings({ kind, fact }: LoadingNote): TruckFinding[] {
  if (fact === null || (kind !== 'waived' && kind !== 'without effect')) return [];
  const code = kind === 'waived' ? 'order-waived' : 'wish-without-effect';
  return [{ code, subjects: { piece: aboutWish(fact) }, numbers: {}, date: null, wish: fact }];
}

function loadFindings(load: TruckResultOne): TruckFinding[] {
  const truck = { kind: 'truck' as const, id: load.id };
  return [
    ...load.axles.flatMap((each) => axleFindings(load.id, each)),
    ...(load.axles.length === 0 && load.kind === undefined
      ? [{ code: 'no-axle-figures' as const, subjects: { truck }, numbers: {}, date: null }]
      : []),
    ...bridgeFindings(load),
    ...load.placements.flatMap(({ id, fact: { against } }): TruckFinding[] =>
      against === undefined
        ? []
        : [{ code: 'freight-barred', subjects: { piece: { kind: 'item', id }, truck }, numbers: {}, date: null, why: against }],
    ),
    ...load.placements.flatMap(({ id, label, fact: { inside } }): TruckFinding[] =>
      inside.length === 0
        ? []
        : [
            {
              code: 'tagged-freight',
              subjects: {
                piece: { kind: 'piece', id, name: label },
                inside: inside.map((each) => ({ kind: 'item', id: each })),
              },
              numbers: {},
              date: null,
            },
          ],
    ),
  ];
}

/** The kingpin is no axle: its limit is that of the tractor’s axles. */
function axleFindings(truck: string, { fact, loadKg, limitKg }: TruckResultOne['axles'][number]): TruckFinding[] {
  if (limitKg === null || fact === 'kingpin' || loadKg < nearly * limitKg) return [];
  return [
    {
      code: loadKg > limitKg ? 'axle-over' : 'axle-nearly-over',
      subjects: { axle: { kind: 'axle', truck, axle: fact } },
      numbers: { loadKg, limitKg },
      date: null,
    },
  ];
}

function bridgeFindings({ id, bridge }: TruckResultOne): TruckFinding[] {
  if (!bridge?.fact) return [];
  const rule = {
    kind: 'rule' as const,
    id: 'US bridge formula',
    title: bridge.rule,
    jurisdiction: 'US',
    edition: null,
    field: null,
    source: bridge.source,
    status: 'found' as const,
  };
  return [
    {
      code: bridge.status === 'over' ? 'bridge-formula-over' : 'bridge-formula',
      subjects: { truck: { kind: 'truck', id }, rule },
      numbers: {},
      date: null,
      bridge: bridge.fact,
    },
  ];
}
