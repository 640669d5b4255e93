import { useQuery } from '@tanstack/react-query';
import { type AnswerOf, request } from '../../../platform/request.js';
import { faultSheetQuery } from './operations.js';

export type Sheet = AnswerOf<typeof faultSheetQuery>['faultSheet'];

/** An item with its faults, where it flies and what could stand for it. */
export function useFaultSheet(itemId: string) {
  return useQuery({ queryKey: ['fault sheet', itemId], queryFn: async () => (await request(faultSheetQuery, { itemId })).faultSheet });
}
