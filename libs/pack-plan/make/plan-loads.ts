import { type TourFile } from '#tour-file';
import { type Words, english } from '#words';
import { wantedLoads } from '../carts/index.js';
import type { PicksResult, ToldFinding } from '../contract/index.js';
import { gatherInputs } from '../inputs/index.js';
import { pickFindings, planPicks } from '../picks/index.js';
import { pointFindings, withStructure } from '../points/index.js';
import { tellFindings } from './tell-findings.js';

/** The loads of a show as it is designed, before a cart or an item is chosen for it, and what they stop for; no search is made. */
export function planLoads(
  file: TourFile,
  showId: string,
  words: Words = english,
): { readonly picks: PicksResult; readonly findings: readonly ToldFinding[] } {
  const inputs = gatherInputs(file, showId, words);
  const loads = wantedLoads(inputs);
  const onCarts = loads.map(({ id, name, hang, positions }) => ({
    id,
    name,
    hang: hang.id,
    cart: null,
    cartModel: null,
    boxes: positions.map((position) => ({
      position,
      serial: null,
      splayDeg: hang.boxes[position - 1]!.splayDeg,
      splaySet: 'in the cart' as const,
      splaySetAtPosition: null,
    })),
  }));
  const picks = withStructure(inputs, planPicks(inputs, loads, onCarts, []));
  // Nothing is chosen yet, so nothing is missing.
  const told = [...pickFindings(inputs, picks), ...pointFindings(inputs, picks)].filter((each) => each.code !== 'item-missing');
  return { picks, findings: tellFindings(told, words) };
}
