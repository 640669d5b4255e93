import { useState } from 'react';
import { drawStowingStep, stowageLines, unlimitedSentence } from '#drawings';
import type { TruckResultOne } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { Note } from '../../ui/notes.js';
import { Part } from '../../ui/page.js';
import { scrolls } from '../../ui/scrolls.js';

/** A container or pallet step by step, from the first that is not ticked; dark is what goes in now. */
export function StowingSteps({ truck, done }: { truck: TruckResultOne; done: ReadonlySet<number> }) {
  const next = truck.rows.findIndex((row) => !done.has(row.number));
  const [chosen, setChosen] = useState<number | null>(null);
  const last = truck.rows.length - 1;
  const step = Math.min(last, chosen ?? (next < 0 ? last : next));
  if (last < 0) return null;
  return (
    <div className="floor">
      <Drawing of={drawStowingStep(truck, step)} wide />
      <div className="row">
        <button type="button" className="plain" disabled={step === 0} onClick={() => setChosen(step - 1)}>
          Step before
        </button>
        <span>
          Step {step + 1} of {last + 1}, this side up
        </span>
        <button type="button" className="plain" disabled={step === last} onClick={() => setChosen(step + 1)}>
          Next step
        </button>
      </div>
    </div>
  );
}

/** What the load as a whole comes to, each figure beside its limit. */
export function StowagePart({ truck, caution }: { truck: TruckResultOne; caution: string }) {
  const { units } = useSettings();
  const unlimited = unlimitedSentence(truck);
  return (
    <Part number={2} title="The load as a whole" margin={<p className="caution">{caution}</p>}>
      <div {...scrolls}>
        <table className="tight">
          <thead>
            <tr>
              <th />
              <th className="num">Comes to</th>
              <th className="num">Limit</th>
            </tr>
          </thead>
          <tbody>
            {stowageLines(truck, units).map((each) => (
              <tr key={each.what}>
                <th scope="row">{each.what}</th>
                <td className="num">
                  {each.value}
                  {each.isOver && ' ■ over'}
                </td>
                <td className="num">{each.most}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {unlimited && <Note weight="look">{unlimited}</Note>}
    </Part>
  );
}
