import type { Examination } from '#tour-file';
import { ExaminationForm } from './examination-form.js';

export interface ExaminationRecord {
  readonly id: string;
  readonly examination: Examination;
  readonly recordedBy: string;
  readonly recordedAt: string;
  readonly supersededBy?: string | null;
  readonly reason?: string | null;
}

/** Every record of an item, newest first; corrected ones stay, struck through in words. */
export function Records({ records, itemId, mayCorrect }: { records: readonly ExaminationRecord[]; itemId: string; mayCorrect: boolean }) {
  if (records.length === 0) return <p className="quiet">No examination on file.</p>;
  return (
    <div className="scroll">
      <table>
        <thead>
          <tr>
            <th>Day</th>
            <th>Outcome</th>
            <th>Examiner</th>
            <th>Report</th>
            <th>Next at the latest</th>
            <th>Recorded</th>
          </tr>
        </thead>
        <tbody>
          {records.map((record) => (
            <Record key={record.id} record={record} itemId={itemId} mayCorrect={mayCorrect} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Record({ record, itemId, mayCorrect }: { record: ExaminationRecord; itemId: string; mayCorrect: boolean }) {
  const { examination: each, supersededBy } = record;
  return (
    <tr>
      <td>{each.on}</td>
      <td>{each.outcome === 'pass' ? '○ passed' : '■ failed'}</td>
      <td>{each.examiner ?? ''}</td>
      <td>
        {each.reportFile ? <a href={`/api/reports/${each.reportFile}`}>{each.report ?? 'report'}</a> : (each.report ?? '')}
        {each.particulars?.statement && <div className="quiet">The examiner states: “{each.particulars.statement}”</div>}
      </td>
      <td>{each.nextLatestOn ?? ''}</td>
      <td>
        {record.recordedAt.slice(0, 10)}, {record.recordedBy}
        {record.reason && <div>corrects an earlier one: {record.reason}</div>}
        {supersededBy ? (
          <div>◐ corrected since, does not count</div>
        ) : (
          mayCorrect && (
            <details>
              <summary>Correct it</summary>
              <ExaminationForm itemId={itemId} of={{ id: record.id, examination: each }} />
            </details>
          )
        )}
      </td>
    </tr>
  );
}
