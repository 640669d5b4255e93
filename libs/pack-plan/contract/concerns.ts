import { type Subject, listSubjects } from '#trade';
import type { HangResult } from './picks-result.js';
import type { ToldFinding } from './plan.js';

export const subjectsOf = (finding: ToldFinding): readonly Subject[] => listSubjects(finding.fact.subjects);

/** Whether a finding is about a hang: the hang, one of its joints, picks or points, or its rigging system. */
export function concernsHang(finding: ToldFinding, hang: Pick<HangResult, 'hang' | 'system' | 'picks'>): boolean {
  return subjectsOf(finding).some((each) => {
    switch (each.kind) {
      case 'hang':
        return each.id === hang.hang;
      case 'joint':
      case 'pick':
        return each.hang === hang.hang;
      case 'point':
        return hang.picks.some((pick) => pick.point === each.name);
      case 'system':
        return each.id === hang.system;
      default:
        return false;
    }
  });
}

/** Whether a finding is about a truck, or about none of the trucks alone. */
export function concernsTruck(finding: ToldFinding, truck: string): boolean {
  const named = subjectsOf(finding).flatMap((each) => (each.kind === 'truck' ? [each.id] : each.kind === 'axle' ? [each.truck] : []));
  return named.length === 0 || named.includes(truck);
}

/** Positions of a hang whose joint above a finding says stop of: what is hatched. */
export const stoppedJoints = (findings: readonly ToldFinding[], hang: string): ReadonlySet<number> =>
  new Set(
    findings
      .filter((each) => each.weight === 'stop')
      .flatMap(subjectsOf)
      .flatMap((each) => (each.kind === 'joint' && each.hang === hang ? [each.position] : [])),
  );
