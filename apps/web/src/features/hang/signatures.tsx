import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { graphql } from '#contracts';
import type { HangResult } from '#pack-plan';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { Part } from '../../ui/page.js';
import { OutsideFields, type OutsideTyped, isWhole, nobodyOutside } from '../plan/outside-fields.js';
import type { PlanInForce } from '../plan/use-show.js';
import { useRiggingRecord } from './readings.js';

const signMutation = graphql(`
  mutation SignOff($planId: ID!, $hang: String!, $kind: String!, $name: String!, $remark: String!, $outside: OutsideInput) {
    signOff(planId: $planId, hang: $hang, kind: $kind, name: $name, remark: $remark, outside: $outside) { signOffs { id } }
  }
`);

const kindWords: Readonly<Record<string, string>> = {
  inspected: 'Inspected after assembly',
  'inspection countersigned': 'Inspection countersigned',
  'handed over': 'Handed over',
};

/** Inspection after assembly, who countersigned it, and the handover; by people on file, or from outside on this device. */
export function Signatures({ inForce, hang, me }: { inForce: PlanInForce; hang: HangResult; me: Person }) {
  const record = useRiggingRecord(inForce.id);
  const own = (record.data?.signOffs ?? []).filter((each) => each.hang === hang.hang);
  const inspector = own.find((each) => each.kind === 'inspected')?.name;
  const isHandedOver = own.some((each) => each.kind === 'handed over');
  const known = (record.data?.signOffs ?? []).filter((each) => each.company);
  return (
    <Part number={3} title="Inspection after assembly, and handover">
      {own.map((each) => (
        <p key={each.id}>
          ○ {kindWords[each.kind] ?? each.kind}, signed {each.name}
          {each.company && `, ${each.role}, ${each.company}, at ${each.place}`}, {momentOf(each.signedAt)} (as {each.signedBy})
          {each.remark && `: ${each.remark}`}
        </p>
      ))}
      <Faults of={record.error} />
      {me.role === 'warehouse' && <p className="quiet">System tech and safety officer sign here.</p>}
      {me.role !== 'warehouse' && inspector === undefined && <Sign kind="inspected" inForce={inForce} hang={hang.hang} start={me.name} />}
      {me.role !== 'warehouse' && inspector !== undefined && (
        <>
          {!isHandedOver && (
            <Sign
              kind="handed over"
              inForce={inForce}
              hang={hang.hang}
              start={inspector === me.name ? '' : me.name}
              but={inspector}
              known={known}
            />
          )}
          <details>
            <summary>Have the inspection countersigned by somebody from outside</summary>
            <Sign kind="inspection countersigned" inForce={inForce} hang={hang.hang} start="" but={inspector} known={known} />
          </details>
        </>
      )}
    </Part>
  );
}

interface SignProps {
  readonly kind: 'inspected' | 'handed over' | 'inspection countersigned';
  readonly inForce: PlanInForce;
  readonly hang: string;
  readonly start: string;
  /** Who signed the inspection, and does not sign this too. */
  readonly but?: string;
  readonly known?: readonly {
    readonly name: string;
    readonly company?: string | null;
    readonly role?: string | null;
    readonly place?: string | null;
  }[];
}

const buttons = { inspected: 'Sign the inspection', 'handed over': 'Sign the handover', 'inspection countersigned': 'Countersign' };

function Sign({ kind, inForce, hang, start, but, known = [] }: SignProps) {
  const client = useQueryClient();
  const [typed, setTyped] = useState<string | null>(null);
  const [isOutside, setOutside] = useState(kind === 'inspection countersigned');
  const [outside, setFields] = useState<OutsideTyped>(nobodyOutside);
  const [remark, setRemark] = useState('');
  const name = isOutside ? outside.name : (typed ?? start);
  const sign = useMutation({
    mutationFn: () => {
      const { company, role, place } = outside;
      return request(signMutation, { planId: inForce.id, hang, kind, name, remark, outside: isOutside ? { company, role, place } : null });
    },
    onSuccess: async () => {
      setRemark('');
      setTyped(null);
      setFields(nobodyOutside);
      await client.invalidateQueries({ queryKey: ['rigging', inForce.id] });
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    sign.mutate();
  };
  return (
    <>
      <Faults of={sign.error} />
      <form onSubmit={submit} className="fields">
        {kind === 'handed over' && (
          <label className="row">
            <input type="checkbox" className="tick" checked={isOutside} onChange={(event) => setOutside(event.target.checked)} /> Somebody
            from outside takes over, such as the venue’s rigger
          </label>
        )}
        {isOutside && known.length > 0 && <KnownHere known={known} onTake={setFields} />}
        {isOutside ? (
          <OutsideFields of={outside} onChange={setFields} />
        ) : (
          <label>
            {but === undefined
              ? 'Name of the person who inspected, as it is on file'
              : `Name of who takes over, as it is on file: another than ${but}`}
            <input value={name} onChange={(event) => setTyped(event.target.value)} />
          </label>
        )}
        <label>
          Remarks
          <input value={remark} onChange={(event) => setRemark(event.target.value)} />
        </label>
        <button type="submit" disabled={sign.isPending || (isOutside ? !isWhole(outside) : name.trim() === '')}>
          {buttons[kind]}
        </button>
      </form>
    </>
  );
}

/** Who from outside has signed at this show before. */
function KnownHere({ known, onTake }: { known: NonNullable<SignProps['known']>; onTake: (of: OutsideTyped) => void }) {
  const take = (name: string) => {
    const found = known.find((each) => each.name === name);
    if (found) onTake({ name, company: found.company ?? '', role: found.role ?? '', place: found.place ?? '' });
  };
  return (
    <label>
      Known at this show
      <select value="" onChange={(event) => take(event.target.value)}>
        <option value="">choose, or write below</option>
        {[...new Set(known.map((each) => each.name))].map((each) => (
          <option key={each}>{each}</option>
        ))}
      </select>
    </label>
  );
}
