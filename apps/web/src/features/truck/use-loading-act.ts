import { useQueryClient } from '@tanstack/react-query';
import { usePlanning } from '../../platform/planning.js';

/** What became of a wish: a new draft and what it changes, or why the trucks cannot be loaded like that. */
export type LoadingAnswer =
  | { readonly __typename: 'LoadingDone'; readonly draftId: string; readonly changes: readonly string[] }
  | { readonly __typename: 'PlanningRefusal'; readonly code: string; readonly sentence: string; readonly reasons: readonly string[] };

type Asked = LoadingAnswer | { readonly __typename: 'JobUnderWay'; readonly job: { id: string; state: string; progress: number } };

/** One wish at a time; `onDraft` when a draft was planned around it. */
export function useLoadingAct(onDraft: (changes: readonly string[]) => void) {
  const client = useQueryClient();
  return usePlanning<Asked>({
    onAnswer: async (answer) => {
      await client.invalidateQueries();
      if (answer.__typename === 'LoadingDone') onDraft(answer.changes);
    },
    // The draft may have been replaced by somebody else's: look again.
    onError: () => void client.invalidateQueries({ queryKey: ['show'] }),
  });
}

export type LoadingActs = ReturnType<typeof useLoadingAct>;
