import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { graphql } from '#contracts';
import { isWornOut, leastDimensionMm } from '#pack-plan';
import type { LoadRule } from '#tour-file';
import { request } from '../../platform/request.js';

const rulesQuery = graphql(`query WearRules { rules }`);

/** A caliper reading against the wear limits of the regimes on file. */
export function WearCheck() {
  const query = useQuery({ queryKey: ['wear-rules'], queryFn: () => request(rulesQuery) });
  const [original, setOriginal] = useState('');
  const [measured, setMeasured] = useState('');
  const rules = ((query.data?.rules as { loadRules: LoadRule[] } | undefined)?.loadRules ?? []).filter((each) => each.wear);
  const known = Number(original) > 0 && Number(measured) > 0;
  if (rules.length === 0) return <p className="quiet">No regime on file has a limit for wear.</p>;
  return (
    <div className="fields">
      <label>
        Dimension when new, mm
        <input inputMode="decimal" value={original} onChange={(event) => setOriginal(event.target.value)} />
      </label>
      <label>
        Measured, mm
        <input inputMode="decimal" value={measured} onChange={(event) => setMeasured(event.target.value)} />
      </label>
      {known &&
        rules.flatMap((rule) =>
          rule.wear!.limits.map((limit) => {
            const out = isWornOut(Number(original), Number(measured), limit.lossShare);
            const least = Math.round(leastDimensionMm(Number(original), limit.lossShare) * 100) / 100;
            return (
              <p key={`${rule.id} ${limit.element}`} role="status">
                {out ? '■ Take it out of use.' : '○ Not at the limit.'} {limit.element}: {measured} mm {out ? 'is at or below' : 'is above'}{' '}
                {least} mm, {Math.round(limit.lossShare * 1000) / 10} % lost of {original} mm (regime {rule.id}: {rule.wear!.source};{' '}
                {rule.wear!.status}). Wear is one of many reasons; the examiner decides.
              </p>
            );
          }),
        )}
    </div>
  );
}
