import { Link } from 'react-router';
import { drawDue } from '#drawings';
import type { DueResult, ToldFinding } from '#pack-plan';
import { Drawing } from '../../ui/drawing.js';
import { Findings } from '../../ui/findings.js';
import { Loaded, Part } from '../../ui/page.js';
import { useDue, useFindings } from '../plan/use-plan-parts.js';

export function DuePart({ planId, tourId }: { planId: string; tourId: string }) {
  const query = useDue(planId);
  const findings = useFindings(planId).data ?? [];
  return <Loaded query={query}>{(due) => <Due due={due} findings={findings} tourId={tourId} />}</Loaded>;
}

function Due({ due, findings, tourId }: { due: DueResult; findings: readonly ToldFinding[]; tourId: string }) {
  return (
    <Part
      number={5}
      title={`Dates, ${due.from} to ${due.to}`}
      id="dates"
      margin={
        <>
          <Findings findings={findings} section="due" />
          {findings.some(({ code }) => code === 'not-judged' || code === 'judged-elsewhere') && (
            <p className="note">
              <Link to={`/tours/${tourId}#places`}>Whose rules hold on this tour</Link>, answered once by the safety officer.
            </p>
          )}
          <p className="note">
            <b>
              {due.visits.count === 0 ? 'No examiner visit' : `${due.visits.count} examiner ${due.visits.count === 1 ? 'visit' : 'visits'}`}
            </b>{' '}
            {due.visits.count === 0
              ? 'is needed on the days given.'
              : `${due.visits.count === 1 ? 'clears' : 'clear'} what can be cleared: ${due.visits.days.map((day) => `${day.on} (${day.items.join(', ')})`).join('; ')}.`}
          </p>
          <p className="caution">{due.caution}</p>
        </>
      }
    >
      <Drawing of={drawDue(due)} wide />
    </Part>
  );
}
