import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { dockSentence, drawTruckPlan, formatMass } from '#drawings';
import type { PackPlan } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { Findings } from '../../ui/findings.js';
import { Part } from '../../ui/page.js';
import { Why } from './hang-parts.js';

/** The trucks of a plan; `search` leads to the same plan on the page of each truck. */
export function TruckPart({ plan, base, search, children }: { plan: PackPlan; base: string; search: string; children?: ReactNode }) {
  const { units } = useSettings();
  const dock = dockSentence(plan.truck);
  return (
    <Part
      number={4}
      title="Trucks"
      id="trucks"
      margin={
        <>
          <Findings findings={plan.findings} section="truck" />
          {plan.truck.trucks.map((truck) => (
            <p key={truck.id} className="note">
              <b>{truck.id}</b>{' '}
              {truck.axles
                .filter((axle) => axle.limitKg !== null)
                .map((axle) => `${axle.axle} ${(axle.loadKg / 1000).toFixed(1)} of ${(axle.limitKg! / 1000).toFixed(1)} t`)
                .join(', ')}
              .
            </p>
          ))}
          <p className="caution">{plan.truck.caution}</p>
        </>
      }
    >
      {dock && <p>{dock}</p>}
      {plan.truck.trucks.map((truck) => (
        <div key={truck.id}>
          <h3>
            <Link to={`${base}/trucks/${encodeURIComponent(truck.id)}${search}`}>{truck.id}, row by row</Link> · {truck.model},{' '}
            {formatMass(truck.massKg, units)} of {formatMass(truck.payloadKg, units)}, {(truck.usedLengthMm / 1000).toFixed(2)} of{' '}
            {(truck.innerLengthMm / 1000).toFixed(2)} m
          </h3>
          <Drawing of={drawTruckPlan(truck)} wide />
          <Why of={truck.working} />
        </div>
      ))}
      <p className="quiet">
        No load of these pieces needs fewer than {plan.truck.bound.trucks} {plan.truck.bound.trucks === 1 ? 'truck' : 'trucks'} or less than{' '}
        {(plan.truck.bound.usedLengthMm / 1000).toFixed(2)} m ({plan.truck.bound.reason}). {gapSentence(plan)}
      </p>
      {children}
    </Part>
  );
}

/** How far the load is from its bound, and what that comes from. */
function gapSentence({ truck }: PackPlan): string {
  const used = truck.trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);
  const { usedLengthMm } = truck.bound;
  if (usedLengthMm <= 0 || used <= usedLengthMm) return '';
  return `This load uses ${(used / 1000).toFixed(2)} m, ${Math.round((used / usedLengthMm - 1) * 100)} % more: rows that people can build, the unloading order, axles and balance cost length that the bound does not know.`;
}
