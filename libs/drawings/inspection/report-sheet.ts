import { type Kept, type InspectedItem, type InspectedRecord, type ReportLine, followDefects, itemLife } from '#records';
import { english, tell } from '#words';
import { type Node, node } from '../tree/index.js';
import { code, hash, heading, lines, paged, says } from './paged.js';

export interface ReportOfItem {
  readonly item: InspectedItem;
  readonly record: InspectedRecord;
  readonly lines: readonly ReportLine[];
  readonly kept: Kept;
  readonly printedOn: string;
}

const words = (value: ReportLine['value']): string => (value === true ? 'yes' : value === false ? 'no' : (value ?? ''));

/** One examination with every field of its report, those that are open too. Statements are the examiner's. */
export function reportSheet({ item, record, lines: fields, kept, printedOn }: ReportOfItem): Node {
  const { examination } = record;
  const { defects } = examination.particulars ?? {};
  return paged(
    { left: `${item.id} · ${item.kind}, ${item.model}`, right: `Examined on ${examination.on} · printed ${printedOn}` },
    node('h1', {}, 'Report of an examination'),
    says(
      `${examination.outcome === 'pass' ? '○ Passed' : '■ Failed'} on ${examination.on}.${examination.defectBy ? ` A defect could become a danger by ${examination.defectBy}.` : ''}${examination.underScheme ? ' Under an examination scheme.' : ''}${examination.satisfies ? ` Satisfies ${examination.satisfies.map((each) => english.interval(each)).join(', ')}.` : ''}${examination.answers ? ` Answers the incidents of ${examination.answers.join(', ')}.` : ''}`,
      examination.outcome === 'pass' ? undefined : 'stop',
    ),
    lines(
      ['Paragraph', 'Content', 'What the report says'],
      fields.map((each) => [
        each.paragraph === null ? '' : each.wasRead ? each.paragraph : `${each.paragraph} *`,
        english.recordField(each.field),
        each.field === 'identity'
          ? identified(words(each.value), item)
          : each.field === 'defects' && defects
            ? defects.length === 0
              ? 'the report names none'
              : 'listed below'
            : each.field === 'reportFile'
              ? record.file
                ? node('span', {}, `${record.file.name}, SHA-256 `, hash(record.file.sha256))
                : missing(each, 'no file kept')
              : each.value === null
                ? missing(each, '–')
                : words(each.value),
      ]),
      'report',
    ),
    defectTable(examination.particulars?.defects, record, item),
    says(
      `Paragraphs are those of LOLER 1998 Schedule 1${fields.some((each) => each.paragraph !== null && !each.wasRead) ? '; with * as it is remembered, not read: compare it with the text' : ''}. Statements are the examiner’s words; nothing here adds to them.`,
    ),
    says(`How long it is kept: ${tell(english.keptUntil, kept.until)}.${kept.sources.length > 0 ? ` ${kept.sources.join('; ')}.` : ''}`),
    says(
      `Recorded by ${record.recordedBy} on ${record.recordedAt.slice(0, 10)}.${record.reason === null ? '' : ` It corrects an earlier record: ${record.reason}.`}`,
    ),
    says('Dates follow from the records on file. They do not replace the examination.', 'caution'),
  );
}

/** The examiner's words, with the serial and the model where they do not name them. */
export function identified(said: string, { id, model }: Pick<InspectedItem, 'id' | 'model'>): string {
  const plain = (text: string): string =>
    ` ${text
      .toLowerCase()
      .split(/[\s,;()]+/)
      .join(' ')
      .trim()} `;
  const names = (name: string): boolean => plain(said).includes(plain(name));
  const serial = names(id) ? said : `${said} ${id}`.trim();
  return names(model) ? serial : `${serial}, ${model}`;
}

const missing = ({ isMissing }: ReportLine, otherwise: string): string => (isMissing ? '■ asked for, and not on record' : otherwise);

function defectTable(
  defects: readonly { readonly part: string }[] | undefined,
  { examination }: InspectedRecord,
  { records }: InspectedItem,
): Node | null {
  if (!defects || defects.length === 0) return null;
  const followed = followDefects(records.map((each) => each.examination)).filter((each) => each.reportedOn === examination.on);
  return node(
    'div',
    {},
    heading('Parts with a defect'),
    lines(
      ['Part', 'Defect', 'A danger', 'Repair', 'Closed'],
      followed.map((each) => [
        each.part,
        each.what,
        each.dangerousBy ? `by ${each.dangerousBy}` : 'at once',
        each.repair ?? '',
        each.closedOn === null ? '■ open' : `${each.closedOn}${each.closedBy ? `, ${each.closedBy}` : ''}`,
      ]),
    ),
  );
}

/** The life of an item, day by day. */
export const lifeList = (item: InspectedItem): Node => {
  const stations = itemLife(item);
  return stations.length === 0
    ? says('Nothing with a day is on file of it.')
    : lines(
        ['Day', 'What'],
        stations.map((each) => [each.on, tell(english.life, each)]),
        'life',
      );
};

/** A page of the register for an inspector: an item a row, with its dates and its last report. */
export function extractSheet(items: readonly InspectedItem[], of: string, printedOn: string): Node {
  return paged(
    { left: 'Extract of the register', right: `${of} · printed ${printedOn}` },
    node('h1', {}, 'Extract of the register'),
    says(`${items.length} items: ${of}.`),
    lines(
      ['Serial', 'Kind, model', 'Depot, state', 'First', 'Last report', 'Next', 'Rated'],
      items.map((item) => {
        const last = item.records.at(-1)?.examination;
        const first = item.firstUsedOn ?? item.boughtOn ?? item.declaredOn;
        return [
          code(item.id),
          `${item.kind}, ${item.model}${item.count === null ? '' : `, ${item.count} of it`}`,
          `${item.depot}, ${item.state}`,
          first ?? 'not on file',
          last
            ? `${last.on}, ${last.outcome === 'pass' ? 'passed' : '■ failed'}, ${last.report ?? 'no number'}, ${last.examiner ?? 'not named'}`
            : 'none',
          item.dueOn ?? item.dueState ?? 'no rule runs out',
          item.rated === null ? '' : `${item.rated.value} ${item.rated.unit}`,
        ];
      }),
    ),
    says('Dates follow from the records on file. They do not replace the examination.', 'caution'),
  );
}
