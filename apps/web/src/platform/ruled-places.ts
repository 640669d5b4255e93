import { useQuery } from '@tanstack/react-query';
import { graphql } from '#contracts';
import type { ExaminationRule } from '#tour-file';
import { request } from './request.js';

const ruledQuery = graphql(`query RuledPlaces { rules }`);

/** Places with examination rules on file, each once. */
export function useRuledPlaces(): readonly string[] {
  const query = useQuery({ queryKey: ['ruled-places'], queryFn: () => request(ruledQuery) });
  const rules = (query.data?.rules as { examinationRules: ExaminationRule[] } | undefined)?.examinationRules ?? [];
  return [...new Set(rules.map((each) => each.jurisdiction))];
}
