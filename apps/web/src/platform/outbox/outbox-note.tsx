import { useOutbox } from './outbox.js';
import { momentOf } from '../written.js';

/** What this device still holds, and what the house did not take; nothing where there is nothing to say. */
export function OutboxNote() {
  const { unsent, waiting, notTaken, ofOthers, dismiss, sendAgain } = useOutbox();
  if (unsent === 0 && notTaken.length === 0 && ofOthers.length === 0) return null;
  return (
    <div className="outbox" aria-live="polite">
      {unsent > 0 && (
        <details>
          <summary>
            ◐ {unsent} not sent yet<span className="quiet"> · kept on this device</span>
          </summary>
          <ol>
            {waiting.slice(0, 100).map((each) => (
              <li key={each.id}>
                {each.words} <span className="quiet">{momentOf(each.doneAt)}</span>
              </li>
            ))}
            {waiting.length > 100 && <li>and {waiting.length - 100} more</li>}
          </ol>
        </details>
      )}
      {notTaken.map((each) => (
        <div key={each.id} className="faults" role="alert">
          <p>
            <b>not taken</b> {each.words} <span className="quiet">{momentOf(each.doneAt)}</span>
            <br />
            {each.reason}
          </p>
          <div className="row">
            <button type="button" className="plain" onClick={() => void dismiss(each)}>
              I have seen it
            </button>
            <button type="button" className="plain" onClick={() => void sendAgain(each)}>
              Send it again
            </button>
          </div>
        </div>
      ))}
      {ofOthers.map(({ name, count }) => (
        <p key={name} className="quiet">
          {count} {count === 1 ? 'action' : 'actions'} of {name} {count === 1 ? 'waits' : 'wait'} on this device until {name} signs in here.
        </p>
      ))}
    </div>
  );
}
