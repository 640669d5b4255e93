import { LostAnswer } from '../platform/lost-answer.js';
import { type Fault, Refused } from '../platform/refused.js';
import { pathInWords } from './path-words.js';

/** An error in words: what was found, where, and what would be right. */
export function Faults({ of }: { of: unknown }) {
  if (!of) return null;
  const faults = of instanceof Refused ? of.faults : [];
  if (of instanceof Refused && of.openRequestId !== undefined)
    return (
      <div className="faults">
        <LostAnswer key={of.openRequestId} requestId={of.openRequestId} />
      </div>
    );
  return (
    <div className="faults" role="alert">
      <p>
        <b>stop</b>{' '}
        {faults.length > 0
          ? 'This cannot be done:'
          : of instanceof Error
            ? of.message
            : 'This was not done, and no reason came back. Try again; if it stays so, tell the system tech.'}
      </p>
      {faults.length > 0 && (
        <ul>
          {faults.slice(0, 20).map((fault, index) => (
            <li key={index}>{fault.onFile === undefined ? <Found fault={fault} /> : <Met fault={fault} />}</li>
          ))}
          {faults.length > 20 && <li>and {faults.length - 20} more</li>}
        </ul>
      )}
    </div>
  );
}

function Found({ fault }: { fault: Fault }) {
  return (
    <>
      {fault.row !== undefined && `Row ${fault.row}${fault.column ? `, ${fault.column}` : ''}: `}
      {fault.row === undefined && fault.field && `${capital(pathInWords(fault.field))}: `}
      wanted {fault.wanted}
      <span className="quiet"> (found {foundWords(fault.value)})</span>
    </>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const foundWords = (value: unknown): string =>
  value === undefined || value === null || value === '' ? 'nothing' : typeof value === 'string' ? value : JSON.stringify(value);

/** Two people wrote one field: what each of them wrote, under the name that the field has on the screen. */
const Met = ({ fault: { named, column, field, wanted } }: { fault: Fault }) => (
  <>
    <strong>{named ?? column ?? field}</strong>: {wanted.replace(/^one of two: /, '')}.
  </>
);
