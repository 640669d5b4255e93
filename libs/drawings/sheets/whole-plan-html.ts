import { type Node, type Units, drawingStyle, node, renderMarkup, sheetStyle } from '../tree/index.js';
import { hangSheet } from './hang-sheet.js';
import { hardwareSheets } from './hardware-sheet.js';
import { pickSheet, stageSheet } from './pick-sheet.js';
import { markOutSheet, pointSheet } from '../points/index.js';
import { runningSheets } from './running-sheet.js';
import type { SheetContext } from '../paper/index.js';
import { cartCardSheet, dueSheet, moveSheet } from './sheets.js';
import { noTruckSheets, truckSheet } from './truck-sheet.js';

/** Every sheet of a plan, in the order of the show. `codeOf` draws the code of a cart's id. */
export function allSheets(context: SheetContext, units: Units, codeOf: (text: string) => Node | null): readonly Node[] {
  const { plan } = context;
  return [
    ...plan.picks.hangs.map((hang) => hangSheet(context, hang, units)),
    pointSheet(context, units),
    markOutSheet(context, units),
    ...plan.picks.hangs.flatMap((hang) => hang.picks.map((pick) => pickSheet(context, hang, pick, units))),
    ...plan.picks.hangs.filter((hang) => hang.stages.length > 0).map((hang) => stageSheet(context, hang, units)),
    ...plan.picks.hangs.flatMap((hang) => runningSheets(context, hang, units)),
    moveSheet(context),
    ...plan.carts.loads.map((load) => cartCardSheet(context, load, load.cart === null ? null : codeOf(load.cart), units)),
    ...hardwareSheets(context, units),
    ...plan.truck.trucks.map((truck) => truckSheet(context, truck, units)),
    ...noTruckSheets(context),
    dueSheet(context),
  ];
}

/** One page of HTML that needs nothing else: drawings inline, ready to print. */
export function wholePlanHtml(context: SheetContext, units: Units = 'metric', codeOf: (text: string) => Node | null = () => null): string {
  const { plan } = context;
  const root =
    ':root{--text:"Atkinson Hyperlegible Next",system-ui,sans-serif;--mono:"Atkinson Hyperlegible Mono",ui-monospace,monospace;--paper:#fff;--ink:#000;--soft:#fff;--line:#777;--quiet:#333;--warn:#000}body{margin:0;background:#fff}';
  const style = `<style>${root}${drawingStyle}${sheetStyle}</style>`;
  const body = renderMarkup(node('main', {}, ...allSheets(context, units, codeOf)));
  const title = renderMarkup(node('title', {}, `${plan.tour.name}: ${plan.show.name}`));
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">${title}${style}</head><body>${body}</body></html>\n`;
}
