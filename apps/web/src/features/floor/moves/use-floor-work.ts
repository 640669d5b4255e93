import { useQuery } from '@tanstack/react-query';
import { type MoveAction, type MoveMade, type WorkList, movesInHand } from '#pack-plan';
import type { Action } from '../../../platform/outbox/queue.js';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { request } from '../../../platform/request.js';
import { workListQuery } from '../../cart/operations.js';

const isMoveAction = (each: Action, planId: string): boolean =>
  (each.kind === 'move' || each.kind === 'undo') && each.values.planId === planId;

const moveAction = ({ kind, values: { box, from, to } }: Action): MoveAction => ({
  kind: kind as MoveAction['kind'],
  move: { box, from, to } as MoveMade,
});

/** The box moves of a plan as the house knows them, with what was done on this device since. */
export function useFloorWork(planId: string) {
  const { waiting } = useOutbox();
  const query = useQuery({
    queryKey: ['work-list', planId],
    queryFn: async () => (await request(workListQuery, { planId })).workList,
  });
  const list: WorkList | undefined = query.data;
  const hand = list && movesInHand(list, waiting.filter((each) => isMoveAction(each, planId)).map(moveAction));
  return { ...query, data: list && hand ? { list, left: hand.left, floor: hand.floor } : undefined };
}
