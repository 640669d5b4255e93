import type { PackPlan, ToldFinding } from '#pack-plan';
import type { Section } from '#trade';
import { type Node, node } from '../tree/index.js';

/** What stands at the top of every sheet. `revision` is a letter, or null for a draft. */
export interface SheetContext {
  readonly plan: PackPlan;
  readonly revision: string | null;
  /** Inputs have changed since the plan was made. */
  readonly isStale?: boolean;
  /** The hang that a sheet is of; without one it is of all. */
  readonly of?: string;
}

const revisionText = (revision: string | null): string => (revision === null ? 'Draft, not released' : `Revision ${revision}`);

export function sheet(context: SheetContext, title: string, sub: string, ...content: (Node | readonly Node[] | null)[]): Node {
  const { plan } = context;
  return node(
    'section',
    { class: 'sheetpage' },
    node(
      'div',
      { class: 'top' },
      node('div', {}, node('p', {}, sub), node('h1', {}, title)),
      node(
        'p',
        { class: 'right' },
        plan.show.name,
        node('br'),
        `${plan.show.venue}, ${plan.show.from}`,
        node('br'),
        revisionText(context.revision),
        ...(context.isStale ? [node('br'), node('b', {}, '◐ Stale: inputs have changed since')] : []),
      ),
    ),
    unapprovedNote(context),
    ...content.flat().filter((each): each is Node => each !== null),
  );
}

/** Stands on every sheet with anything of a rigging system which the safety officer has not approved. */
function unapprovedNote({ plan, of }: SheetContext): Node | null {
  const hangs = plan.picks.hangs.filter((each) => of === undefined || each.hang === of);
  const systems = [...new Set(hangs.filter((each) => !each.systemApproved).map((each) => each.system))];
  if (systems.length === 0) return null;
  const text = `EXAMPLE, NOT FOR USE: the data of the rigging system ${systems.join(', ')} is not approved by the safety officer.`;
  return node('p', { class: 'stop' }, text);
}

export const caution = (text: string): Node => node('p', { class: 'caution' }, text);

/** A load rule by title, edition, and the mark of its content, which another edition under the same name does not have. */
export const ruleNamed = ({ title, edition, contentMark }: PackPlan['picks']['loadRule']): string =>
  [title, ...(edition === null ? [] : [`edition ${edition}`]), ...(contentMark === undefined ? [] : [`content ${contentMark}`])].join(', ');

type Cell = string | Node | { readonly right: string };

/** A table; cells given as `{ right }` stand flush right. */
export function table(head: readonly Cell[], rows: readonly (readonly Cell[])[]): Node {
  const cell = (tag: string) => (each: Cell) =>
    typeof each === 'string' ? node(tag, {}, each) : 'right' in each ? node(tag, { class: 'n' }, each.right) : node(tag, {}, each);
  return node(
    'table',
    {},
    node('thead', {}, node('tr', {}, ...head.map(cell('th')))),
    node('tbody', {}, ...rows.map((row) => node('tr', {}, ...row.map(cell('td'))))),
  );
}

export const mono = (text: string): Node => node('span', { class: 'mono' }, text);
export const tickBox = (): Node => node('span', { class: 'tickbox' });

/** What failed or is missing has a sentence of its own on the sheet that it belongs to. */
export function findingList(findings: readonly ToldFinding[], ...sections: Section[]): Node | null {
  const shown = findings.filter((each) => sections.includes(each.section) && each.weight !== 'agrees');
  if (shown.length === 0) return null;
  const mark = { stop: '■ Stop. ', look: '◐ Check. ', agrees: '' };
  return node(
    'ul',
    { class: 'findings' },
    ...shown.map((each) => node('li', { class: each.weight }, node('b', {}, mark[each.weight]), each.sentence)),
  );
}

export const signatures = (): Node =>
  node(
    'div',
    { class: 'sign' },
    node('span', {}, 'Competent person, name'),
    node('span', {}, 'Date and time'),
    node('span', {}, 'Signature'),
  );
