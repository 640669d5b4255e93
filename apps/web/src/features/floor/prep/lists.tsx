import { leavesTheHouse, pickList } from '#pack-plan';
import { Faults } from '../../../ui/faults.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { usePrep } from './use-prep.js';

/** What the plan uses, place by place as the register has it. */
export function PickList(given: OnFloor) {
  const prep = usePrep(given);
  return (
    <FloorPage name="Pick list" title="Pick list" back={`${given.home}/prep`}>
      {prep.fault && <Faults of={prep.fault} />}
      {!prep.isRead && !prep.fault && <p className="quiet">Reading ...</p>}
      {pickList(prep.uses).map(({ depot, inside, items }) => (
        <details key={`${depot} ${inside ?? ''}`} open={inside === null}>
          <summary>
            {depot}
            {inside === null ? '' : `, ${inside}`}: {items.length}
          </summary>
          <ul className="plain">
            {items.map(({ id, kind, model, count }) => (
              <li key={id}>
                <span className="mono">{id}</span> {model}, {count === null ? kind : `${count} pieces`}
              </li>
            ))}
          </ul>
        </details>
      ))}
    </FloorPage>
  );
}

/** What leaves the building, to be read out. */
export function Leaves(given: OnFloor) {
  const prep = usePrep(given);
  return (
    <FloorPage name="What leaves" title="What leaves the building" back={`${given.home}/prep`}>
      {prep.fault && <Faults of={prep.fault} />}
      {!prep.isRead && !prep.fault && <p className="quiet">Reading ...</p>}
      <ul className="slots" aria-label="What leaves, by kind">
        {leavesTheHouse(prep.uses).map(({ kind, model, pieces }) => (
          <li key={`${kind} ${model}`}>
            <b>{pieces}</b>
            <span>{model}</span>
            <span className="quiet">{kind}</span>
          </li>
        ))}
      </ul>
    </FloorPage>
  );
}
