import type { InputChange } from '#trade';
import { type Words, tell } from '#words';
import { type ChangeView, changeFact } from '../said.types.js';

/** After an import of a whole register thousands of inputs are others: enough are named. */
const mostSaid = 50;

/** Changed inputs as they are shown. */
export function changeViews(changes: readonly InputChange[], words: Words): ChangeView[] {
  const said = changes
    .slice(0, changes.length <= mostSaid ? mostSaid : mostSaid - 1)
    .map((each) => ({ ...changeFact(each), sentence: tell(words.changes, each) }));
  const left = changes.length - said.length;
  if (left === 0) return said;
  return [...said, { code: 'more', subjects: [], numbers: [{ name: 'more', values: [left] }], sentence: words.more(left) }];
}
