import { type PicksResult, structurePoints } from '#pack-plan';
import { type SheetContext, caution, mono, sheet, table, tickBox } from '../paper/index.js';
import { type Node, type Units, formatShort, node } from '../tree/index.js';

/** A place to chalk on the floor below a point. */
export interface MarkOutRow {
  readonly mark: string;
  /** A point of the structure, the hook below a bridle, a foot of it, an anchor. */
  readonly what: 'point' | 'hook' | 'foot' | 'anchor';
  readonly xMm: number;
  readonly yMm: number;
  readonly diagonalMm: number;
  /** To the marks laid before, the nearest two: what does not agree was laid wrong. */
  readonly checks: readonly { readonly mark: string; readonly mm: number }[];
  /** What is written on the tape. */
  readonly tape: string;
}

const whats = { point: 'point', leg: 'foot', anchor: 'anchor' } as const;

/** Everything to chalk, from the datum outward; a bridle as its hook and its feet. What has no place on the stage is left out and named. */
export function markOutRows(picks: PicksResult): { readonly rows: readonly MarkOutRow[]; readonly unplaced: readonly string[] } {
  const points = structurePoints(picks);
  const unplaced = points.filter((each) => each.xMm === null || each.yMm === null).map((each) => each.point);
  const marks = [
    ...points.flatMap(({ point, kind, xMm, yMm, heightMm, hangs }) =>
      xMm === null || yMm === null ? [] : [{ mark: point, what: whats[kind], xMm, yMm, tape: tapeOf(point, kind, heightMm, hangs) }],
    ),
    ...hooksOf(picks),
  ];
  const laid: (typeof marks)[number][] = [];
  const rows = marks
    .map((each) => ({ ...each, diagonalMm: Math.hypot(each.xMm, each.yMm) }))
    .sort((a, b) => a.diagonalMm - b.diagonalMm || (a.mark < b.mark ? -1 : 1))
    .map((each) => {
      const before = laid.map((other) => ({ mark: other.mark, mm: Math.hypot(other.xMm - each.xMm, other.yMm - each.yMm) }));
      laid.push(each);
      return { ...each, checks: before.sort((a, b) => a.mm - b.mm).slice(0, 2) };
    });
  return { rows, unplaced };
}

function tapeOf(point: string, kind: keyof typeof whats, heightMm: number | null, hangs: readonly string[]): string {
  const height = heightMm === null ? '' : ` · ${(heightMm / 1000).toFixed(2)} m up`;
  const shared = hangs.length > 1 ? ` · ${hangs.length} picks` : '';
  return `${point}${kind === 'leg' ? ' · FOOT' : kind === 'anchor' ? ' · ANCHOR' : ''}${height}${shared}`;
}

/** Where the hook of a hoist below a bridle comes down: not where its feet are. */
const hooksOf = ({ hangs }: PicksResult) =>
  hangs.flatMap((hang) =>
    hang.picks.flatMap((pick) =>
      pick.bridle && pick.bridle.legs.length > 0 && pick.stage
        ? [{ mark: `${pick.point}, hook`, what: 'hook' as const, ...pick.stage, tape: `${pick.point} · HOOK, not a foot` }]
        : [],
    ),
  );

/** The mark-out: distances from the datum, diagonals and cross-checks, words for the tape, a box for each mark that is chalked. */
export function markOutSheet(context: SheetContext, units: Units = 'metric'): Node {
  const { picks } = context.plan;
  const { rows, unplaced } = markOutRows(picks);
  const off = (mm: number, ahead: string, behind: string) =>
    Math.abs(mm) < 0.5 ? '0' : `${formatShort(Math.abs(mm), units)} ${mm > 0 ? ahead : behind}`;
  return sheet(
    context,
    'Mark-out',
    `${rows.length} marks`,
    node(
      'p',
      {},
      `Datum 0, 0: ${picks.site?.datum ?? 'where it is on the stage is not on file: agree it with the venue before anything is chalked'}. Ahead: to the audience. Left: of somebody who stands at the datum and looks to the audience. Distances are level.`,
    ),
    table(
      [
        'Chalked',
        'Mark',
        { right: 'Ahead / back' },
        { right: 'Left / right' },
        { right: 'Diagonal from 0, 0' },
        'Check against',
        'On the tape',
      ],
      rows.map((row) => [
        tickBox(),
        node('span', {}, node('b', {}, row.mark), node('small', {}, ` ${row.what}`)),
        { right: off(row.xMm, 'ahead', 'back') },
        { right: off(row.yMm, 'left', 'right') },
        { right: formatShort(row.diagonalMm, units) },
        row.checks.map((each) => `${each.mark}: ${formatShort(each.mm, units)}`).join('; ') || 'the first mark',
        mono(row.tape),
      ]),
    ),
    unplaced.length === 0
      ? null
      : node('p', { class: 'stop' }, `No place on the stage on file, not to be chalked: ${unplaced.join('; ')}.`),
    caution(
      'Marks are where the structure is loaded. A mark that does not agree with both its checks is laid again. The venue’s rigger confirms each before a point is hung.',
    ),
    node(
      'div',
      { class: 'sign' },
      node('span', {}, 'Chalked by'),
      node('span', {}, 'Date and time'),
      node('span', {}, 'Agreed, rigger of the venue'),
    ),
  );
}
