import type { CartException } from '#trade';
import type { CartsResult, Placement, Said, TruckResult, TruckResultOne } from '../contract/index.js';
import { axleNames } from './axle-names.js';

type Without<T, K extends keyof T> = Omit<T, K> & Partial<Pick<T, K>>;

/** Exceptions were kept as sentences, reasons without data beside them. */
export type KeptCarts = Omit<CartsResult, 'loads' | 'leftOut' | 'fact'> &
  Partial<Pick<CartsResult, 'fact'>> & {
    readonly loads: readonly (Without<Omit<CartsResult['loads'][number], 'exceptions' | 'boxes'>, 'name' | 'hangName'> & {
      readonly exceptions: readonly (string | Said<CartException>)[];
      readonly boxes: readonly Without<CartsResult['loads'][number]['boxes'][number], 'splaySetAtPosition'>[];
    })[];
    readonly leftOut: readonly Without<CartsResult['leftOut'][number], 'fact'>[];
  };

export const wholeCarts = (kept: KeptCarts): CartsResult => ({
  ...kept,
  fact: kept.fact ?? null,
  loads: kept.loads.map((load) => ({
    ...load,
    name: load.name ?? load.id,
    hangName: load.hangName ?? load.hang,
    boxes: load.boxes.map((box) => ({ ...box, splaySetAtPosition: box.splaySetAtPosition ?? null })),
    exceptions: load.exceptions.map((each) => (typeof each === 'string' ? { fact: null, sentence: each } : each)),
  })),
  leftOut: kept.leftOut.map((each) => ({ ...each, fact: each.fact ?? null })),
});

type KeptStop = Omit<NonNullable<TruckResultOne['stops']>[number], 'loads'> & {
  readonly loads: readonly Without<NonNullable<TruckResultOne['stops']>[number]['loads'][number], 'fact'>[];
};
type KeptTruckOne = Omit<TruckResultOne, 'placements' | 'axles' | 'stops' | 'bridge'> & {
  readonly placements: readonly Without<Placement, 'fact'>[];
  readonly axles: readonly Without<TruckResultOne['axles'][number], 'fact'>[];
  readonly stops?: readonly KeptStop[];
  readonly bridge?: Without<NonNullable<TruckResultOne['bridge']>, 'fact'> | null;
};
export type KeptTruck = Omit<TruckResult, 'trucks' | 'leftOver' | 'notes' | 'refused'> & {
  readonly trucks: readonly KeptTruckOne[];
  readonly leftOver: readonly Without<TruckResult['leftOver'][number], 'fact'>[];
  readonly notes?: readonly Without<NonNullable<TruckResult['notes']>[number], 'fact'>[];
  readonly refused?: readonly (string | NonNullable<TruckResult['refused']>[number])[];
};

const withAxle = <T extends { readonly axle: string; readonly fact?: TruckResultOne['axles'][number]['fact'] }>(each: T) => ({
  ...each,
  fact: each.fact ?? axleNames[each.axle] ?? ('gross' as const),
});

/** A label that names the piece is that of a case: carts were called by their hang. */
const withFreight = (each: Without<Placement, 'fact'>): Placement => ({
  ...each,
  fact: each.fact ?? { isCase: each.label.includes(each.id), inside: [] },
});

export function wholeTruck(kept: KeptTruck): TruckResult {
  const { trucks, leftOver, notes, refused, ...rest } = kept;
  return {
    ...rest,
    trucks: trucks.map(({ placements, axles, stops, bridge, ...truck }) => ({
      ...truck,
      placements: placements.map(withFreight),
      axles: axles.map(withAxle),
      ...(stops ? { stops: stops.map((stop) => ({ ...stop, loads: stop.loads.map(withAxle) })) } : {}),
      ...(bridge === undefined ? {} : { bridge: bridge && { ...bridge, fact: bridge.fact ?? null } }),
    })),
    leftOver: leftOver.map((each) => ({ ...each, fact: each.fact ?? null })),
    ...(notes ? { notes: notes.map((each) => ({ ...each, fact: each.fact ?? null })) } : {}),
    ...(refused ? { refused: refused.map((each) => (typeof each === 'string' ? { piece: 'kept', sentence: each } : each)) } : {}),
  };
}
