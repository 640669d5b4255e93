import type { LabelOf } from '#drawings';
import { type CartLoad, type FloorCommand, commandCodes } from '#pack-plan';

export const placeKinds = {
  slots: 'Slots of the carts',
  trunks: 'Hardware trunks',
  trucks: 'Trucks',
  points: 'Points of the structure',
  lanyard: 'Codes for a lanyard',
} as const;
export type PlaceKind = keyof typeof placeKinds;

export interface Places {
  /** Path of the floor of the show. */
  readonly floor: string;
  readonly loads: readonly Pick<CartLoad, 'id' | 'cart' | 'boxes'>[];
  readonly trunks: readonly string[];
  readonly trucks: readonly string[];
  readonly points: readonly {
    readonly point: string;
    readonly of: readonly { readonly hang: string }[];
    readonly hangs: readonly string[];
  }[];
}

const commands: readonly { readonly command: FloorCommand; readonly what: string }[] = [
  { command: 'done', what: 'it is done' },
  { command: 'undo', what: 'take it back' },
  { command: 'fault', what: 'something is wrong' },
];

/** Labels of places: each opens the page of the floor where it is worked with. A label names a place, and no load or date, which change. */
export function placeLabels(kind: PlaceKind, { floor, loads, trunks, trucks, points }: Places): readonly LabelOf[] {
  const to = (...path: readonly string[]) => ({ path: [floor, ...path.map(encodeURIComponent)].join('/') });
  switch (kind) {
    case 'slots':
      return loads.flatMap(({ id, cart, boxes }) =>
        boxes.map(({ slot }) => ({
          id: `${cart ?? id}/${slot}`,
          kind: 'slot',
          model: `slot ${slot} from the top, ${id}`,
          opens: to('carts', id),
        })),
      );
    case 'trunks':
      return trunks.map((id) => ({ id, kind: 'trunk', model: 'hardware', opens: to('prep', 'trunks', id) }));
    case 'trucks':
      return trucks.map((id) => ({ id, kind: 'truck', model: 'row by row', opens: to('trucks', id) }));
    case 'points':
      return points.map(({ point, of, hangs }) => ({
        id: point,
        kind: 'point',
        model: [...new Set(hangs)].join(', '),
        opens: to('fly', ...(of[0] ? [of[0].hang] : [])),
      }));
    case 'lanyard':
      return commands.map(({ command, what }) => ({
        id: command.toUpperCase(),
        kind: 'code',
        model: what,
        opens: { text: commandCodes[command] },
      }));
  }
}
