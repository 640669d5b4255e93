import { type SheetContext, wholePlanHtml } from '#drawings';

const entities: Record<string, string> = { '&lt;': '<', '&gt;': '>', '&quot;': '"', '&amp;': '&' };

/** The words as one line; a blank is a blank, whether lines break there or not. */
const oneLine = (text: string): string => text.replace(/\s+/g, ' ');

/** Which of these words do not stand on the sheets of a plan. */
export function missingInPrint(context: SheetContext, words: readonly unknown[]): readonly string[] {
  const printed = printedText(context);
  return words.map((each) => oneLine(String(each))).filter((each) => !printed.includes(each));
}

/** Every word that stands on the sheets of a plan, without the markup. */
export function printedText(context: SheetContext): string {
  const text = wholePlanHtml(context)
    .replace(/<style>.*?<\/style>/gs, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/&(lt|gt|quot|amp);/g, (each) => entities[each]!);
  return oneLine(text);
}
