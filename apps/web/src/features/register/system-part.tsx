import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { graphql } from '#contracts';
import { type RiggingSystem, closingOf } from '#tour-file';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { useEditBegun } from './edit-begun.js';
import { starterSequences } from './starter-sequences.js';
import { type SystemText, emptySystem, lineOf, systemFrom, systemText } from './system-text.js';

const approveMutation = graphql(`mutation ApproveRiggingSystem($id: ID!) { approveRiggingSystem(id: $id) }`);
const saveMutation = graphql(
  `mutation SaveRiggingSystem($system: ModelJson!, $was: ModelJson) { saveRiggingSystem(system: $system, was: $was) }`,
);

/** The data of a rigging system with its lift sequence; changed data waits for the safety officer again. */
export function SystemPart({ system, me }: { system: RiggingSystem; me: Person }) {
  const client = useQueryClient();
  const edit = useEditBegun(system);
  const approve = useMutation({
    mutationFn: () => request(approveMutation, { id: system.id }),
    onSuccess: () => client.invalidateQueries(),
  });
  return (
    <div>
      <h3>Rigging system {system.id}</h3>
      <p>
        {system.manual.title}, revision {system.manual.revision}.{' '}
        {system.approved ? `Approved by ${system.approved.by} on ${system.approved.on}.` : '■ Example, not for use: not approved.'}
      </p>
      {!system.approved && actsAsOfficer(me, 'the house') && (
        <p>
          <button type="button" onClick={() => approve.mutate()} disabled={approve.isPending}>
            Approve revision {system.manual.revision}
          </button>
        </p>
      )}
      <Faults of={approve.error} />
      <h3>Going up</h3>
      <ol>
        {system.goingUp.map((step) => (
          <li key={lineOf(step)}>{lineOf(step)}</li>
        ))}
      </ol>
      <h3>Coming down</h3>
      <ol>
        {system.comingDown.map((step) => (
          <li key={lineOf(step)}>{lineOf(step)}</li>
        ))}
      </ol>
      <p className="caution">The maker’s manual comes first. Nothing leaves the ground until the person in charge of lifting says so.</p>
      {me.role !== 'warehouse' && (
        <details>
          <summary>Change the data of {system.id}</summary>
          <SystemForm
            key={JSON.stringify(edit.from)}
            system={edit.from}
            was={() => edit.read(edit.from)}
            onBegin={edit.begin}
            onRefused={edit.hear}
            onSaved={edit.end}
          />
        </details>
      )}
    </div>
  );
}

/** The data of a system from its manual: on file already (`was`: as it was read), or new where `system` is null. */
export function SystemForm({
  system,
  was,
  onBegin,
  onRefused,
  onSaved,
}: {
  system: RiggingSystem | null;
  was: () => object | null;
  onBegin?: () => void;
  onRefused?: (fault: unknown) => void;
  onSaved: () => void;
}) {
  const [values, setValues] = useState<SystemText>(system ? systemText(system) : emptySystem);
  const client = useQueryClient();
  const save = useMutation({
    mutationFn: () => request(saveMutation, { system: systemFrom(values, !system), was: was() }),
    ...(onRefused && { onError: onRefused }),
    onSuccess: () => client.invalidateQueries().then(onSaved),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  const field = (key: keyof typeof values, label: string) => (
    <label>
      {label}
      <input value={values[key]} onChange={(event) => setValues({ ...values, [key]: event.target.value })} />
    </label>
  );
  const usual = closingOf(undefined);
  const choice = (key: keyof typeof values, label: string, choices: readonly string[], unsaid?: string) => (
    <label>
      {label}
      <select value={values[key]} onChange={(event) => setValues({ ...values, [key]: event.target.value })}>
        {!system && <option value="">choose, as the manual says</option>}
        {system && unsaid !== undefined && <option value="">not said; taken as {unsaid}</option>}
        {choices.map((each) => (
          <option key={each}>{each}</option>
        ))}
      </select>
    </label>
  );
  const steps = (key: 'goingUp' | 'comingDown', label: string) => (
    <label>
      {label}
      <textarea rows={8} value={values[key]} onChange={(event) => setValues({ ...values, [key]: event.target.value })} />
    </label>
  );
  const beginWith = (name: string) => {
    const found = starterSequences.find((each) => each.name === name);
    if (!found) return;
    const [goingUp, comingDown] = [found.goingUp, found.comingDown].map((all) => all.map(lineOf).join('\n'));
    setValues({ ...values, ...found.closing, goingUp: goingUp ?? '', comingDown: comingDown ?? '' });
  };
  return (
    <form onSubmit={submit} onInput={onBegin}>
      {!system && (
        <p className="row">
          <select value="" aria-label="Usual steps of a family" onChange={(event) => beginWith(event.target.value)}>
            <option value="">Begin with usual steps</option>
            {starterSequences.map(({ name }) => (
              <option key={name}>{name}</option>
            ))}
          </select>
          <span className="quiet">Common practice, no published source: what the maker writes takes their place.</span>
        </p>
      )}
      <div className="fields">
        {!system && field('id', 'Name of the rigging system')}
        {field('title', 'Manual')}
        {field('revision', 'Revision of the manual')}
        {choice('splaySetAt', 'Splay is set at the', ['upper box', 'lower box'])}
        {choice('jointBetweenCarts', 'Joint between two carts', ['set at the point', 'set in the cart'])}
        {choice('gridJoint', 'Joint to the grid closes', ['on the ground', 'in the air'], usual.gridJoint)}
        {choice(
          'cartJoints',
          'Joints between carts close',
          ['swung back and driven down', 'on the floor at matched tilt', 'box by box'],
          usual.cartJoints,
        )}
        {field('closedSplayDeg', 'Splay of boxes on the cart, degrees')}
        {field('tagLines', 'Tag lines of a hang, ; between')}
        {field('mostBoxes', 'Most boxes')}
        {field('mostMassKg', 'Most mass kg')}
        {field('mostNoseUpDeg', 'While lifting at most nose up, degrees')}
        {field('mostNoseDownDeg', 'While lifting at most nose down, degrees')}
        {field('windLimitMps', 'Wind limit m/s')}
      </div>
      <label>
        Frames between boxes that do not link: name; model above; model below; mass kg; front height, rear height, depth, centre behind,
        centre below, rear lever in mm; the model of frame on file, so that it is counted
        <textarea rows={2} value={values.adapters} onChange={(event) => setValues({ ...values, adapters: event.target.value })} />
      </label>
      {steps(
        'goingUp',
        'Going up, one step a line; begin with “start:”, “first cart:”, “each cart:” or “end:”, and “, hold” before the colon where everything waits, then the moments of the lift that it passes (“, swung back + driven down”); after a bar, why',
      )}
      {steps('comingDown', 'Coming down, likewise')}
      <Faults of={save.error} />
      <button type="submit" disabled={save.isPending}>
        {system ? 'Save; approval is asked for again' : 'Put the rigging system on file'}
      </button>
    </form>
  );
}
