import { type FollowedDefect, type InspectedItem, followDefects, keepUntil, rulesOfRecord } from '#records';
import type { PackPlan } from '#pack-plan';
import type { ExaminationRule } from '#tour-file';
import { english, tell } from '#words';
import { type Node, type Units, formatForce, formatMass, node } from '../tree/index.js';
import { type HangInTheAir, type InTheAir, controlOnTheGround, inTheAir, lotsInTheAir } from './in-the-air.js';
import { liftingPlan } from './lifting-plan.js';
import { ruleNamed } from '../paper/index.js';
import { code, hash, heading, lines, paged, says } from './paged.js';

export interface SignedOff {
  readonly hang: string;
  readonly kind: string;
  readonly name: string;
  readonly remark: string;
  /** Of somebody from outside. */
  readonly company?: string | null;
  readonly role?: string | null;
  readonly place?: string | null;
  readonly signedAt: string;
  readonly signedBy: string;
}

/** The newest head of the sealed log of events. */
export interface PrintedLogHead {
  readonly head: string;
  readonly lines: number;
  readonly sealedAt: string;
}

export interface InspectionFile {
  readonly plan: PackPlan;
  readonly revision: string | null;
  readonly releasedBy: string | null;
  readonly releasedAt: string | null;
  /** Why it was released although it says stop; null: it does not, or was not. */
  readonly releasedDespite: string | null;
  readonly isStale: boolean;
  readonly items: readonly InspectedItem[];
  readonly rules: readonly ExaminationRule[];
  readonly signOffs: readonly SignedOff[];
  readonly logHead?: PrintedLogHead;
  readonly printedOn: string;
}

const fileCaution =
  'This file says what is on record. It does not replace the examination, the maker’s mechanical check, a structural engineer, or the competent person on site.';

/** Everything that speaks for what hangs over a show, in one print: for the inspector, and for the drawer afterwards. */
export function inspectionFile(file: InspectionFile, units: Units = 'metric'): Node {
  const { plan, revision } = file;
  const given: Given = { known: new Map(file.items.map((each) => [each.id, each])), units };
  return paged(
    {
      left: `${plan.tour.name} · ${plan.show.name}`,
      right: `${plan.show.venue}, ${plan.show.from} · ${revision === null ? 'Draft, not released' : `Revision ${revision}`} · printed ${file.printedOn}`,
    },
    node('h1', {}, 'Inspection file'),
    release(file),
    findings(plan),
    node('div', {}, ...inTheAir(plan).map((each) => ofHang(each, given, plan))),
    lots('In the air: for all hangs', lotsInTheAir(plan), given),
    lots('On the ground: hoist control and tag lines', controlOnTheGround(plan), given),
    reports(file),
    declarations(file.items),
    defects(file.items),
    assembly(file),
    node('div', {}, ...liftingPlan(plan, units)),
    editions(file),
    sealed(file.logHead),
    says(fileCaution, 'caution'),
    says(plan.picks.caution, 'caution'),
    says(plan.due.caution, 'caution'),
  );
}

function release(file: InspectionFile): Node {
  const { plan } = file;
  const who =
    file.revision === null
      ? 'Nobody has released this plan: it is a draft.'
      : `Revision ${file.revision} was released by ${file.releasedBy ?? 'somebody not named'}${file.releasedAt === null ? '' : ` on ${file.releasedAt.slice(0, 16).replace('T', ' at ')} (UTC)`}.`;
  return node(
    'div',
    {},
    says(`Tour days ${plan.tour.from} to ${plan.tour.to}, depot ${plan.tour.depot}. Show ${plan.show.number} of ${plan.show.of}.`),
    says(who, file.revision === null ? 'stop' : undefined),
    ...file.signOffs
      .filter((each) => each.kind === 'release countersigned')
      .map((each) => says(`Countersigned by ${signer(each)}; on the device of ${each.signedBy}.`)),
    file.releasedDespite === null ? null : says(`■ Released although it says stop, because: ${file.releasedDespite}`, 'stop'),
    file.isStale
      ? says('◐ Stale: what it was made from has changed since. What is below is read from the register as it is now.', 'stop')
      : null,
  );
}

function findings({ findings: all }: PackPlan): Node | null {
  const said = all.filter(
    (each) => each.weight !== 'agrees' && (each.section === 'due' || each.section === 'picks' || each.weight === 'stop'),
  );
  if (said.length === 0) return null;
  const mark = { stop: '■ Stop. ', look: '◐ Check. ', agrees: '' };
  return node(
    'div',
    {},
    heading('Stops and cautions of the plan'),
    node(
      'ul',
      { class: 'findings' },
      ...said.map((each) => node('li', { class: each.weight }, node('b', {}, mark[each.weight]), each.sentence)),
    ),
  );
}

const sourced = (figures: string, source: string | null | undefined): string => `${figures} (${source ?? 'source not said'})`;

function rated({ rated: load, ratedJoint: joint }: InspectedItem, units: Units): string {
  if (load !== null) return sourced(`${load.value} ${load.unit}`, load.source);
  if (joint === null) return 'none on file';
  const { rearLinkN, frontPinN, source } = joint;
  const figures = [
    rearLinkN === null ? [] : [`rear link ${formatForce(rearLinkN, units)}`],
    frontPinN === null ? [] : [`front pin ${formatForce(frontPinN, units)}`],
  ].flat();
  return sourced(figures.join(', '), source);
}

/** Where there is no last day it is said why: no rule gives one, or it may not be used at all. */
const withoutDay = (dueState: string | null): string => (dueState === null || dueState === 'no interval' ? 'no interval' : `■ ${dueState}`);

interface Given {
  readonly known: ReadonlyMap<string, InspectedItem>;
  readonly units: Units;
}

function itemLine({ item, where }: InTheAir, { known, units }: Given, dueOn: string | undefined): (string | Node)[] {
  const found = known.get(item);
  if (!found) return [code(item), where, '■ not on file', '', '', ''];
  const last = found.records.at(-1)?.examination;
  const report = last
    ? `${last.on}, ${last.outcome === 'pass' ? 'passed' : '■ failed'}: ${last.report ?? 'report without a number'}, ${last.examiner ?? 'examiner not named'}`
    : found.declaredOn === null
      ? 'none'
      : `none; declared ${found.declaredOn}`;
  const state = found.state === 'in service' ? '' : `■ ${found.state}`;
  const lastDay = found.dueOn ?? dueOn;
  const until = state || (lastDay === undefined ? withoutDay(found.dueState) : node('span', { class: 'line' }, lastDay));
  const model = found.owner === null ? found.model : `${found.model}, kit of ${found.owner}`;
  return [code(item), where, model, rated(found, units), report, until];
}

const headOfItems = ['Serial', 'Where', 'Model', 'Rated load (source)', 'Last report', 'Last day of use'];

function ofHang({ hang, items }: HangInTheAir, given: Given, { due }: PackPlan): Node {
  const dueOf = new Map(due.items.map((each) => [each.item, each.dueOn ?? undefined]));
  return node(
    'div',
    {},
    heading(`In the air: ${hang.name}`),
    says(`${hang.boxes.length} boxes under ${hang.grid}, ${formatMass(hang.massKg, given.units)}, rigging system ${hang.system}.`),
    lines(
      headOfItems,
      items.map((each) => itemLine(each, given, dueOf.get(each.item))),
      'items',
    ),
  );
}

function lots(title: string, taken: readonly InTheAir[], given: Given): Node | null {
  if (taken.length === 0) return null;
  return node(
    'div',
    {},
    heading(title),
    lines(
      headOfItems,
      taken.map((each) => itemLine(each, given, undefined)),
      'items',
    ),
  );
}

/** The last report of each, with the file that proves it and until when it is kept. */
function reports({ items, rules }: InspectionFile): Node {
  const rows = items.flatMap((item) => {
    const last = item.records.at(-1);
    if (!last) return [];
    const kept = keepUntil(last.examination, rulesOfRecord(rules, item.kind, last.examination), null);
    return [
      [
        code(item.id),
        last.examination.report ?? 'no number',
        last.examination.examiner ?? 'not named',
        last.examination.on,
        last.file ? node('span', {}, `${last.file.name} `, hash(last.file.sha256)) : 'no file kept',
        tell(english.keptUntil, kept.until),
      ],
    ];
  });
  const none = items.filter((each) => each.records.length === 0).map((each) => each.id);
  return node(
    'div',
    {},
    heading('Last report of each'),
    rows.length === 0
      ? says('No report is on file.')
      : lines(['Serial', 'Report', 'Examiner', 'Day', 'File, SHA-256', 'Kept'], rows, 'reports'),
    none.length === 0
      ? null
      : node(
          'p',
          {},
          `No examination on file, ${none.length}: `,
          ...none.flatMap((id, place) => [node('span', { class: 'line' }, id), place === none.length - 1 ? '.' : ', ']),
        ),
  );
}

function declarations(items: readonly InspectedItem[]): Node {
  const declared = items.filter((each) => each.declaredOn !== null);
  return node(
    'div',
    {},
    heading('Declarations of conformity'),
    declared.length === 0
      ? says('None of what hangs here has a declaration on file.')
      : lines(
          ['Serial', 'Model', 'Declared on'],
          declared.map((each) => [code(each.id), each.model, each.declaredOn]),
        ),
  );
}

function defects(items: readonly InspectedItem[]): Node {
  const followed = items.flatMap((item) => followDefects(item.records.map((each) => each.examination)).map((each) => ({ item, each })));
  return node(
    'div',
    {},
    heading('Defects, and how they were closed'),
    followed.length === 0
      ? says('No report on file of what hangs here names a defect part by part.')
      : lines(
          ['Serial', 'Reported', 'Part and defect', 'A danger', 'Closed'],
          followed.map(({ item, each }) => [
            code(item.id),
            `${each.reportedOn}${each.report === null ? '' : `, ${each.report}`}`,
            `${each.part}: ${each.what}${each.repair ? `. Repair: ${each.repair}` : ''}`,
            each.dangerousBy ? `by ${each.dangerousBy}` : 'at once',
            closing(each),
          ]),
        ),
  );
}

const closing = ({ closedOn, closedBy }: FollowedDefect): string =>
  closedOn === null ? '■ open' : `${closedOn}${closedBy === null ? '' : `, ${closedBy}`}`;

const signer = ({ name, company, role, place }: SignedOff): string =>
  company ? `${name}, ${role ?? ''}, ${company}, at ${place ?? ''} (from outside)` : name;

function assembly({ plan, signOffs }: InspectionFile): Node {
  const rows = plan.picks.hangs.flatMap((hang) => {
    const signed = signOffs.filter((each) => each.hang === hang.hang);
    if (signed.length === 0) return [[hang.name, '■ not signed', '', '', '']];
    return signed.map((each) => [
      hang.name,
      each.kind,
      signer(each),
      `${each.signedAt.slice(0, 16).replace('T', ' ')} UTC, recorded by ${each.signedBy}`,
      each.remark,
    ]);
  });
  return node('div', {}, heading('Inspection after assembly'), lines(['Hang', 'What', 'Signed by', 'When', 'Remarks'], rows));
}

const statusWords: Readonly<Record<ExaminationRule['status'], string>> = {
  found: 'read there',
  'house rule': 'rule of the company',
  'from memory': 'from memory, no authority',
};

function editions({ plan, rules }: InspectionFile): Node {
  const { loadRule } = plan.picks;
  return node(
    'div',
    {},
    heading('Rules it was held against'),
    says(`Loads: ${ruleNamed(loadRule)}. ${loadRule.source} (${loadRule.status}).`),
    ...(loadRule.belowPublished ?? []).map((each) => says(`■ ${each}`, 'stop')),
    rules.length === 0
      ? says('■ No examination rule is on file.', 'stop')
      : lines(
          ['Place', 'Kinds', 'How often', 'By whom', 'Source'],
          rules.map((each) => [
            each.jurisdiction,
            each.kinds.join(', '),
            each.intervals.length > 0 ? each.intervals.map(english.interval).join(' and ') : english.ruleBasis[each.basis ?? 'time'],
            each.mayExamine?.join(', ') ?? each.who ?? 'not said',
            `${each.source} (${statusWords[each.status]})`,
          ]),
        ),
  );
}

function sealed(logHead: PrintedLogHead | undefined): Node {
  return node(
    'div',
    {},
    heading('Head of the log'),
    logHead
      ? node(
          'p',
          {},
          `${logHead.lines} lines of the log were sealed on ${logHead.sealedAt.slice(0, 16).replace('T', ' at ')} (UTC) under `,
          hash(logHead.head),
          '. Whoever has this print can prove what stood in the log on that day.',
        )
      : says('Nothing of the log was sealed when this was printed.'),
  );
}
