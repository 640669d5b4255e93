import { useQueryClient } from '@tanstack/react-query';
import { Link } from 'react-router';
import type { CartLoad } from '#pack-plan';
import type { ReadFinding } from '#trade';
import { usePlanning } from '../../../platform/planning.js';
import { type AnswerOf, request } from '../../../platform/request.js';
import { Faults } from '../../../ui/faults.js';
import { Note } from '../../../ui/notes.js';
import { UnderWay } from '../../../ui/under-way.js';
import { cartsQuery, makePlan } from '../../plan/operations.js';
import { setStackMutation } from '../../cart/operations.js';
import type { OnFloor } from '../page/on-floor.js';
import { useFloorWork } from '../moves/use-floor-work.js';

interface TakeInProps {
  readonly given: OnFloor;
  readonly load: CartLoad;
  readonly said: ReadFinding & { readonly code: 'same-model' };
}

/**
 * A box of the right model stands where another was planned. It is taken in by writing down how the cart stands and planning again from there; what the draft
 * then wants of this cart is read back and said, it is not taken for granted. The plan in force stays as it is until the draft is released.
 */
export function TakeIn({ given, load, said }: TakeInProps) {
  const { me, plan, home } = given;
  const floor = useFloorWork(plan.id).data?.floor;
  const taking = useTakeIn(given, load, said.box);
  const [wanted] = said.open.expected;
  const stack = floor?.carts.find((each) => each.cart === load.cart)?.boxes;
  if (me.role === 'safety') return <Note weight="look">The warehouse or the system tech can take it into the plan.</Note>;
  if (said.open.slot === null || wanted === undefined)
    return (
      <Note weight="look">Read the other boxes first: then it is known which place it stands in, and it can be taken into the plan.</Note>
    );
  if (!floor) return <p className="quiet">Reading ...</p>;
  if (!stack?.includes(wanted))
    return (
      <p>
        By the record {wanted} does not stand on this cart yet. Do its <Link to={`${home}/moves`}>box moves</Link> first, or set {said.box}{' '}
        aside.
      </p>
    );
  return (
    <>
      <p className="row">
        <button
          type="button"
          disabled={taking.isPending}
          onClick={() => taking.take(stack.map((each) => (each === wanted ? said.box : each)))}
        >
          Take {said.box} into the plan for {wanted}
        </button>
      </p>
      <p className="quiet">
        It is written down that {said.box} stands here and {wanted} on the floor, and the show is planned again from there.
      </p>
      {taking.isPending && <UnderWay job={taking.job} onCancel={taking.cancel} of="Planning again" />}
      <Faults of={taking.error} />
      {taking.refusal && <Note weight="stop">{taking.refusal}</Note>}
    </>
  );
}

/** Writes down how the cart stands, plans again, and reads back what the draft wants of it. */
function useTakeIn({ show, tell }: OnFloor, load: CartLoad, box: string) {
  const client = useQueryClient();
  const make = usePlanning<AnswerOf<typeof makePlan>['makePackPlan']>({
    onAnswer: async (answer) => {
      if (answer.__typename === 'PlanMade') {
        const { carts } = (await request(cartsQuery, { id: answer.planId })).plan;
        const drafted = carts.loads.find((each) => each.boxes.some(({ serial }) => serial === box));
        const isHere = drafted?.id === load.id;
        const what = drafted
          ? `The new draft has ${box} in ${drafted.cart ?? drafted.id} (${drafted.id}), with ${carts.boxMoves} box moves in all.`
          : `The new draft does not want ${box}: restack this cart.`;
        const sentence = `${what} The draft counts once the system tech has released it.`;
        tell({ load: load.id, weight: isHere ? 'agrees' : 'look', sentence });
      }
      await client.invalidateQueries();
    },
  });
  const { tourId, showId } = show;
  const take = (serials: readonly string[]) =>
    make.mutate(async (requestId) => {
      await request(setStackMutation, { cart: load.cart ?? '', serials: [...serials] });
      return (await request(makePlan, { tourId, showId }, { requestId })).makePackPlan;
    });
  const refusal = make.data?.__typename === 'PlanningRefusal' ? make.data.sentence : null;
  return { take, refusal, job: make.job, cancel: make.cancel, isPending: make.isPending, error: make.error };
}
