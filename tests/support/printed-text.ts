import { type SheetContext, wholePlanHtml } from '#drawings';

const entities: Record<string, string> = { '&lt;': '<', '&gt;': '>', '&quot;': '"', '&amp;': '&' };

/** Every word that stands on the sheets of a plan, without the markup. */
export function printedText(context: SheetContext): string {
  return wholePlanHtml(context)
    .replace(/<style>.*?<\/style>/gs, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/&(lt|gt|quot|amp);/g, (each) => entities[each]!)
    .replace(/\s+/g, ' ');
}
