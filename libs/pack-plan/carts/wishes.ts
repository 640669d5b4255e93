import type { AllocationAnswer, Preferences, Wish } from '#cart-allocation';
import { addDays } from '#kernel';
import type { CartLoad, CartsResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import type { WantedLoad } from './allocation-case.js';

/** Weights of the wishes beside one another where the tour sets none: a box that falls due soon weighs as much as a thousand uses. */
const usual = { dueSoon: 1000, wear: 1 };

/** Ties after the number of moves: boxes that do not fall due within 30 days after the tour, then the less used; like carts left and right. */
export function preferencesOf(inputs: PlanInputs, loads: readonly WantedLoad[]): Preferences {
  const weights = { ...usual, ...inputs.file.tour.wishes };
  const hangs = inputs.show.hangs;
  const rankOf = new Map(
    loads.map((load) => {
      const original = hangs.find((hang) => hang.id === load.hang.id)?.mirrorOf ?? load.hang.id;
      // A hang and its mirror side by side, cart by cart.
      const place = hangs.findIndex((hang) => hang.id === original) * 10_000 + load.number * 100;
      return [load.id, place + hangs.findIndex((hang) => hang.id === load.hang.id)] as const;
    }),
  );
  return {
    boxRank: (serial) => weights.dueSoon * Number(isDueSoon(inputs, serial)) + weights.wear * (inputs.items.get(serial)?.uses ?? 0),
    loadRank: (load) => rankOf.get(load) ?? 0,
  };
}

/** What a box counts in the wishes that come after the number of moves. */
export const boxWishes = (inputs: PlanInputs): readonly Wish[] => [
  { code: 'due soon', of: (serial) => Number(isDueSoon(inputs, serial)) },
  { code: 'uses', of: (serial) => inputs.items.get(serial)?.uses ?? 0 },
];

function isDueSoon(inputs: PlanInputs, serial: string): boolean {
  const dueOn = inputs.availability.get(serial)?.judgement?.dueOn;
  return dueOn !== null && dueOn !== undefined && dueOn <= addDays(inputs.file.tour.returnTo, 30);
}

export function wishesOf(inputs: PlanInputs, loads: readonly CartLoad[], answer: AllocationAnswer): CartsResult['wishes'] {
  const serials = loads.flatMap((load) => load.boxes.flatMap((box) => box.serial ?? []));
  const uses = serials.map((serial) => inputs.items.get(serial)?.uses ?? 0);
  return [
    { name: 'carts touched', value: answer.measures.cartsTouched, unit: 'carts' },
    {
      name: 'boxes that fall due within 30 days after the tour',
      value: serials.filter((serial) => isDueSoon(inputs, serial)).length,
      unit: 'boxes',
    },
    { name: 'least used to most used', value: uses.length === 0 ? 0 : Math.max(...uses) - Math.min(...uses), unit: 'uses' },
    { name: 'left and right apart', value: apart(inputs, loads), unit: 'uses a pair' },
  ];
}

/** How far the boxes of mirrored places are apart in use, on average. */
function apart(inputs: PlanInputs, loads: readonly CartLoad[]): number {
  const at = new Map<string, string | null>(
    loads.flatMap((load) => load.boxes.map((box) => [`${load.hang}/${box.position}`, box.serial] as const)),
  );
  const usesOf = (serial: string | null | undefined) => (serial ? (inputs.items.get(serial)?.uses ?? 0) : undefined);
  const differences = inputs.show.hangs
    .filter((hang) => hang.mirrorOf !== undefined)
    .flatMap((hang) =>
      [...at].flatMap(([place, serial]) => {
        const [id, position] = place.split('/') as [string, string];
        const [own, other] = [usesOf(serial), usesOf(at.get(`${hang.mirrorOf}/${position}`))];
        return id === hang.id && own !== undefined && other !== undefined ? [Math.abs(own - other)] : [];
      }),
    );
  return differences.length === 0 ? 0 : Math.round((10 * differences.reduce((sum, each) => sum + each, 0)) / differences.length) / 10;
}
