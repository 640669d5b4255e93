import type { Node, Units } from '../tree/index.js';
import { markOutSheet, pointSheet } from '../points/index.js';
import type { SheetContext } from '../paper/index.js';
import { hangSheet } from './hang-sheet.js';
import { hardwareSheets } from './hardware-sheet.js';
import { pickSheet, stageSheet } from './pick-sheet.js';
import { runningSheets } from './running-sheet.js';
import { cartCardSheet, dueSheet, moveSheet } from './sheets.js';
import { noTruckSheets, truckSheet } from './truck-sheet.js';

/** Sheets that are printed in one go: `key` stands in the address, `parts` are printed alone, each by its name. */
export interface NamedSheets {
  readonly key: string;
  readonly name: string;
  readonly parts: readonly { readonly name: string; readonly sheets: () => readonly Node[] }[];
}

/** Every sheet of a plan by its name, in the order of the show. `codeOf` draws the code of a cart's id. */
export function namedSheets(context: SheetContext, units: Units, codeOf: (text: string) => Node | null): readonly NamedSheets[] {
  const { picks, carts, truck } = context.plan;
  const one = (key: string, name: string, sheets: () => readonly Node[]): NamedSheets => ({ key, name, parts: [{ name, sheets }] });
  const all: NamedSheets[] = [
    {
      key: 'hangs',
      name: 'Hangs',
      parts: picks.hangs.map((hang) => ({ name: hang.name, sheets: () => [hangSheet(context, hang, units)] })),
    },
    one('points', 'Points', () => [pointSheet(context, units)]),
    one('mark-out', 'Mark-out of the points', () => [markOutSheet(context, units)]),
    {
      key: 'picks',
      name: 'Picks, the sum and every comparison',
      parts: picks.hangs.flatMap((hang) =>
        hang.picks.map((pick) => ({
          name: `${hang.name}, hole ${pick.hole}`,
          sheets: () => [pickSheet(context, hang, pick, units)],
        })),
      ),
    },
    {
      key: 'stages',
      name: 'Stages of the lift',
      parts: picks.hangs
        .filter((hang) => hang.stages.length > 0)
        .map((hang) => ({ name: hang.name, sheets: () => [stageSheet(context, hang, units)] })),
    },
    {
      key: 'running',
      name: 'Lift sequences',
      parts: picks.hangs.map((hang) => ({ name: hang.name, sheets: () => runningSheets(context, hang, units) })),
    },
    one('moves', 'Box moves', () => [moveSheet(context)]),
    {
      key: 'carts',
      name: 'Cart cards',
      parts: carts.loads.map((load) => ({
        name: load.cart ?? `${load.hangName}, cart ${load.number} of ${load.of}`,
        sheets: () => [cartCardSheet(context, load, load.cart === null ? null : codeOf(load.cart), units)],
      })),
    },
    one('hardware', 'Hardware and spares', () => hardwareSheets(context, units)),
    {
      key: 'trucks',
      name: 'Trucks',
      parts: [
        ...truck.trucks.map((each) => ({ name: `Truck ${each.id}`, sheets: () => [truckSheet(context, each, units)] })),
        ...(truck.trucks.length > 0 ? [] : [{ name: 'What stays behind', sheets: () => noTruckSheets(context) }]),
      ],
    },
    one('due', 'Examinations due', () => [dueSheet(context)]),
  ];
  return all.filter(({ parts }) => parts.length > 0);
}

/** All of them, one after another. */
export const allSheets = (context: SheetContext, units: Units, codeOf: (text: string) => Node | null): readonly Node[] =>
  namedSheets(context, units, codeOf).flatMap(({ parts }) => parts.flatMap(({ sheets }) => sheets()));
