import { Note } from '../../ui/notes.js';
import type { LoadingAnswer } from './use-loading-act.js';

/** What became of a wish, in words. */
export function Answer({ of }: { of: LoadingAnswer }) {
  if (of.__typename === 'PlanningRefusal')
    return (
      <div role="alert">
        <Note weight="stop">{of.sentence}</Note>
        <ul>
          {of.reasons.slice(0, 12).map((each) => (
            <li key={each}>{each}</li>
          ))}
          {of.reasons.length > 12 && <li>and {of.reasons.length - 12} more</li>}
        </ul>
      </div>
    );
  return (
    <div role="status">
      <p>{of.changes.length === 0 ? 'A draft was made. Nothing else moves.' : 'A draft was made:'}</p>
      <ul>
        {of.changes.slice(0, 12).map((each) => (
          <li key={each}>{each}</li>
        ))}
        {of.changes.length > 12 && <li>and {of.changes.length - 12} more; the show lists them all.</li>}
      </ul>
    </div>
  );
}
