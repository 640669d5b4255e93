import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { dockSentence, drawTruckPlan, formatMass, partName } from '#drawings';
import type { ToldFinding, TruckResultOne, TrucksHead } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { Findings } from '../../ui/findings.js';
import { Loaded, Part } from '../../ui/page.js';
import { Why } from '../../ui/why.js';
import { useFindings, useTruckHead, useTrucks } from '../plan/use-plan-parts.js';

interface TruckPartProps {
  readonly planId: string;
  readonly trucks: readonly string[];
  readonly base: string;
  readonly search: string;
  readonly children?: ReactNode;
}

/** The trucks of a plan; `search` leads to the same plan on the page of each truck. */
export function TruckPart({ planId, trucks, ...rest }: TruckPartProps) {
  const head = useTruckHead(planId);
  const each = useTrucks(planId, trucks);
  const findings = useFindings(planId).data ?? [];
  return (
    <Loaded query={head}>
      {(all) => <Loaded query={each}>{(found) => <Trucks head={all} trucks={found} findings={findings} {...rest} />}</Loaded>}
    </Loaded>
  );
}

interface TrucksProps extends Pick<TruckPartProps, 'base' | 'search' | 'children'> {
  readonly head: TrucksHead;
  readonly trucks: readonly TruckResultOne[];
  readonly findings: readonly ToldFinding[];
}

function Trucks({ head, trucks, findings, base, search, children }: TrucksProps) {
  const { units } = useSettings();
  const dock = dockSentence(head);
  return (
    <Part
      number={4}
      title="Trucks"
      id="trucks"
      margin={
        <>
          <Findings findings={findings} section="truck" />
          {trucks
            .filter((truck) => truck.axles.length > 0)
            .map((truck) => (
              <p key={truck.id} className="note">
                <b>{truck.id}</b>{' '}
                {truck.axles
                  .filter((axle) => axle.limitKg !== null)
                  .map((axle) => `${axle.axle} ${(axle.loadKg / 1000).toFixed(1)} of ${(axle.limitKg! / 1000).toFixed(1)} t`)
                  .join(', ')}
                .
              </p>
            ))}
          <p className="caution">{head.caution}</p>
        </>
      }
    >
      {dock && <p>{dock}</p>}
      {trucks.map((truck) => (
        <div key={truck.id}>
          <h3>
            <Link to={`${base}/trucks/${encodeURIComponent(truck.id)}${search}`}>
              {truck.id}, {partName(truck)} by {partName(truck)}
            </Link>{' '}
            · {truck.model}, {formatMass(truck.massKg, units)} of {formatMass(truck.payloadKg, units)},{' '}
            {(truck.usedLengthMm / 1000).toFixed(2)} of {(truck.innerLengthMm / 1000).toFixed(2)} m
          </h3>
          <Drawing of={drawTruckPlan(truck)} wide />
          <Why of={truck.working} />
        </div>
      ))}
      <p className="quiet">
        No load of these pieces needs fewer than {head.bound.trucks} {head.bound.trucks === 1 ? 'truck' : 'trucks'} or less than{' '}
        {(head.bound.usedLengthMm / 1000).toFixed(2)} m ({head.bound.reason}). {gapSentence(head, trucks)}
      </p>
      {children}
    </Part>
  );
}

/** How far the load is from its bound, and what that comes from. */
function gapSentence({ bound }: TrucksHead, trucks: readonly TruckResultOne[]): string {
  const used = trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);
  const { usedLengthMm } = bound;
  if (usedLengthMm <= 0 || used <= usedLengthMm) return '';
  return `This load uses ${(used / 1000).toFixed(2)} m, ${Math.round((used / usedLengthMm - 1) * 100)} % more: rows that people can build, the unloading order, axles and balance cost length that the bound does not know.`;
}
