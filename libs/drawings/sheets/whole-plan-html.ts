import { type Node, type Units, drawingStyle, node, renderMarkup, sheetStyle } from '../tree/index.js';
import type { SheetContext } from '../paper/index.js';
import { allSheets } from './named-sheets.js';

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
