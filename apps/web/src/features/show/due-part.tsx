import { drawDue } from '#drawings';
import type { PackPlan } from '#pack-plan';
import { Drawing } from '../../ui/drawing.js';
import { Findings } from '../../ui/findings.js';
import { Part } from '../../ui/page.js';

export function DuePart({ plan }: { plan: PackPlan }) {
  const { due } = plan;
  return (
    <Part
      number={5}
      title={`Dates, ${due.from} to ${due.to}`}
      id="dates"
      margin={
        <>
          <Findings findings={plan.findings} section="due" />
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
