import { Link } from 'react-router';
import type { Kept, ReportLine } from '#records';
import type { Examination } from '#tour-file';
import { english, tell } from '#words';
import { ExaminationForm } from './examination-form.js';
import { dayOf } from '../../../platform/written.js';
import { scrolls } from '../../../ui/scrolls.js';

export interface ExaminationRecord {
  readonly id: string;
  readonly examination: Examination;
  readonly recordedBy: string;
  readonly recordedAt: string;
  readonly supersededBy?: string | null;
  readonly reason?: string | null;
  readonly file?: { readonly id: string; readonly name: string; readonly sizeBytes: number; readonly sha256: string } | null;
  readonly kept: Kept;
  readonly lines: readonly ReportLine[];
}

interface OfItem {
  readonly itemId: string;
  readonly kind: string;
  readonly mayCorrect: boolean;
}

/** Every record of an item, newest first; corrected ones stay, struck through in words. */
export function Records({ records, itemId, kind, mayCorrect }: OfItem & { records: readonly ExaminationRecord[] }) {
  if (records.length === 0) return <p className="quiet">No examination on file.</p>;
  return (
    <div {...scrolls}>
      <table>
        <thead>
          <tr>
            <th>Day</th>
            <th>Outcome</th>
            <th>Examiner</th>
            <th>Report</th>
            <th>Next at the latest</th>
            <th>Kept</th>
            <th>Recorded</th>
          </tr>
        </thead>
        <tbody>
          {records.map((record) => (
            <Record key={record.id} record={record} itemId={itemId} kind={kind} mayCorrect={mayCorrect} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Record({ record, itemId, kind, mayCorrect }: OfItem & { record: ExaminationRecord }) {
  const { examination: each, supersededBy } = record;
  return (
    <tr>
      <td>{each.on}</td>
      <td>{each.outcome === 'pass' ? '○ passed' : '■ failed'}</td>
      <td>{each.examiner ?? ''}</td>
      <td>
        {each.reportFile ? <a href={`/api/reports/${each.reportFile}`}>{each.report ?? 'report'}</a> : (each.report ?? '')}
        <div>
          <Link to={`/register/${encodeURIComponent(itemId)}/records/${record.id}`}>Every field of it</Link>
        </div>
        {record.file && (
          <div className="quiet">
            SHA-256 <code>{record.file.sha256.slice(0, 12)}</code>
          </div>
        )}
        {each.particulars?.statement && <div className="quiet">The examiner states: “{each.particulars.statement}”</div>}
      </td>
      <td>{each.nextLatestOn ?? ''}</td>
      <td>
        {tell(english.keptUntil, record.kept.until)}
        {record.kept.sources.length > 0 && <div className="quiet">{record.kept.sources.join('; ')}</div>}
      </td>
      <td>
        {dayOf(record.recordedAt)}, {record.recordedBy}
        {record.reason && <div>corrects an earlier one: {record.reason}</div>}
        {supersededBy ? (
          <div>◐ corrected since, does not count</div>
        ) : (
          mayCorrect && (
            <details>
              <summary>Correct it</summary>
              <ExaminationForm itemId={itemId} kind={kind} of={{ id: record.id, examination: each }} />
            </details>
          )
        )}
      </td>
    </tr>
  );
}
