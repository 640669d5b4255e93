import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link } from 'react-router';
import type { CartLoad } from '#pack-plan';
import type { ReadFinding } from '#trade';
import { usePlanning } from '../../platform/planning.js';
import { type AnswerOf, request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';
import { UnderWay } from '../../ui/under-way.js';
import { cartsQuery, makePlan } from '../plan/operations.js';
import { setStackMutation } from '../cart/operations.js';
import type { OnFloor } from './on-floor.js';
import { useFloorWork } from './use-floor-work.js';

interface TakeInProps {
  readonly given: OnFloor;
  readonly load: CartLoad;
  readonly said: ReadFinding & { readonly code: 'same-model' };
}

/**
 * A box of the right model stands where another was planned. It is taken in by writing down how the cart stands and planning again from there; what the draft
 * then wants of this cart is read back and said, it is not taken for granted. The plan in force stays as it is until the draft is released.
 */
export function TakeIn({ given: { me, show, plan, home }, load, said }: TakeInProps) {
  const work = useFloorWork(plan.id).data;
  const client = useQueryClient();
  const stack = work?.floor.carts.find((each) => each.cart === load.cart)?.boxes;
  const wanted = stack?.find((each) => said.open.expected.includes(each));
  const result = useMutation({ mutationFn: async (planId: string) => (await request(cartsQuery, { id: planId })).plan.carts });
  const make = usePlanning<AnswerOf<typeof makePlan>['makePackPlan']>({
    onAnswer: async (answer) => {
      await client.invalidateQueries();
      if (answer.__typename === 'PlanMade') result.mutate(answer.planId);
    },
  });
  const standing = stack && wanted === undefined ? undefined : stack?.map((each) => (each === wanted ? said.box : each));
  const { tourId, showId } = show;
  const take = () =>
    make.mutate(async (requestId) => {
      await request(setStackMutation, { cart: load.cart ?? '', serials: [...(standing ?? [])] });
      return (await request(makePlan, { tourId, showId }, { requestId })).makePackPlan;
    });
  if (me.role === 'safety') return <Note weight="look">The warehouse or the system tech can take it into the plan.</Note>;
  if (!standing || load.cart === null)
    return (
      <p>
        By the record this cart does not stand as planned yet. Do its <Link to={`${home}/moves`}>box moves</Link> first, or set {said.box}{' '}
        aside.
      </p>
    );
  const drafted = result.data?.loads.find((each) => each.boxes.some((box) => box.serial === said.box));
  return (
    <>
      <p className="row">
        <button type="button" disabled={make.isPending || make.isSuccess} onClick={take}>
          Take {said.box} into the plan: {wanted} stands on the floor
        </button>
      </p>
      {make.isPending && <UnderWay job={make.job} onCancel={make.cancel} of="Planning again" />}
      <Faults of={make.error ?? result.error} />
      {make.data?.__typename === 'PlanningRefusal' && <Note weight="stop">{make.data.sentence}</Note>}
      {result.data && (
        <Note weight={drafted?.cart === load.cart ? 'agrees' : 'look'}>
          {drafted
            ? `The new draft has ${said.box} in ${drafted.cart ?? drafted.id} (${drafted.id}), with ${result.data.boxMoves} box moves in all.`
            : `The new draft does not want ${said.box}; the cart is to be restacked.`}{' '}
          It counts when the system tech has released it.
        </Note>
      )}
    </>
  );
}
