import type { InspectedItem } from './inspected-item.js';

const heading = [
  ...['serial', 'kind', 'model', 'count', 'state', 'depot', 'owner', 'bought on', 'first used on', 'declared on'],
  ...['rated load', 'unit', 'source of the rating', 'examined on', 'outcome', 'report', 'examiner', 'next no later than'],
  ...['report file', 'SHA-256', 'last day of use', 'judged', 'examinations on file'],
];

/** The register for an inspector as rows of a CSV, the heading first: an item a row, with its last report. */
export const extractRows = (items: readonly InspectedItem[]): readonly (readonly string[])[] => [heading, ...items.map(rowOf)];

function rowOf(item: InspectedItem): readonly string[] {
  const last = item.records.at(-1);
  const { on, outcome, report, examiner, nextLatestOn } = last?.examination ?? {};
  const { value, unit, source } = item.rated ?? {};
  return [
    ...[item.id, item.kind, item.model, item.count, item.state, item.depot, item.owner, item.boughtOn, item.firstUsedOn, item.declaredOn],
    ...[value, unit, source, on, outcome, report, examiner, nextLatestOn, last?.file?.name, last?.file?.sha256],
    ...[item.dueOn, item.dueState, item.records.length],
  ].map((each) => (each === null || each === undefined ? '' : `${each}`));
}
