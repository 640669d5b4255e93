import { Link } from 'react-router';
import { splaysToSet, trunkLines } from '#pack-plan';
import { Faults } from '../../../ui/faults.js';
import { useCarts, useHardware } from '../../plan/use-plan-parts.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { usePrep } from './use-prep.js';

/** Before the show leaves: what is tested, read back, counted and picked, with how much of it is left. */
export function PrepHome(given: OnFloor) {
  const { home, plan } = given;
  const prep = usePrep(given);
  const loads = useCarts(plan.id).data?.loads ?? [];
  const trunks = [...trunkLines(useHardware(plan.id).data?.lines ?? []).keys()];
  const boxes = loads.flatMap((load) => load.boxes.flatMap((box) => box.serial ?? []));
  const set = loads.filter((load) => load.cart !== null && splaysToSet(load).length > 0);
  const tested = boxes.filter((each) => prep.foundOf('bench', each) !== null).length;
  const read = set.filter((load) => prep.foundOf('splays', load.cart) !== null).length;
  const counted = trunks.filter((each) => prep.foundOf('trunk', each) !== null).length;
  return (
    <FloorPage
      name="Prep"
      title="Prep"
      back={home}
      foot={
        <Link className="btn big" to={`${home}/prep/bench`}>
          Test a box
        </Link>
      }
    >
      {prep.fault && <Faults of={prep.fault} />}
      <Job to={`${home}/prep/pick`} name="Pick list" what="place by place, what the plan uses" />
      <Job to={`${home}/prep/bench`} name="Bench test" what="each box before it is stacked" done={tested} of={boxes.length} />
      <Job to={`${home}/prep/splays`} name="Splays" what="preset in the carts, and read back" done={read} of={set.length} />
      <Job to={`${home}/prep/trunks`} name="Trunks" what="counted, batch by batch" done={counted} of={trunks.length} />
      <Job to={`${home}/prep/leaves`} name="What leaves" what="to be read out at the door" />
      <Job
        to={`/labels/${given.show.tourId}/${given.show.showId}`}
        name="Labels"
        what="slots, trunks, trucks, points, and codes for a lanyard"
      />
    </FloorPage>
  );
}

function Job({ to, name, what, done, of }: { to: string; name: string; what: string; done?: number; of?: number }) {
  return (
    <Link className="job" to={to}>
      <b>{name}</b>
      <span>{what}</span>
      {of !== undefined && (
        <div className="n">
          {done}
          <small> of {of}</small>
        </div>
      )}
    </Link>
  );
}
