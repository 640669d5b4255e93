import { type Node, node } from '../tree/index.js';

/** A time in which one person judged alone in the house; `until` null: it holds. Moments, ISO 8601. */
export interface OnePersonTime {
  readonly since: string;
  readonly until?: string | null;
  readonly by: string;
  readonly reason: string;
}

const dayOf = (moment: string): string => moment.slice(0, 10);

/** What every sheet says while one person judges alone, and afterwards the sheets of what was released meanwhile; null where two looked. */
export function onePersonLine(times: readonly OnePersonTime[], releasedAt: string | null = null): string | null {
  const [now] = times;
  if (now && !now.until)
    return `One person only judges what is released, accepted and signed in this company since ${dayOf(now.since)}: ${now.by}, ${now.reason}. No second person has looked.`;
  const then = releasedAt === null ? undefined : times.find((each) => each.since <= releasedAt && each.until && releasedAt <= each.until);
  if (!then) return null;
  return `One person only judged when this was released: ${then.by}, ${then.reason}. Two have judged again since ${dayOf(then.until ?? '')}; this was not looked at anew.`;
}

/** A sheet with the line under its head; what is no sheet stays as it is. */
export function withOnePersonLine(of: Node, line: string | null): Node {
  const isSheet =
    of.tag === 'section' &&
    String(of.attributes['class'] ?? '')
      .split(' ')
      .includes('sheetpage');
  if (line === null || !isSheet) return of;
  const note = node('p', { class: 'stop' }, `◐ ${line}`);
  const [first, ...others] = of.children;
  const isHead = typeof first === 'object' && first.attributes['class'] === 'top';
  return { ...of, children: isHead ? [first, note, ...others] : [note, ...of.children] };
}
