import { canonicalJson } from '#kernel';
import type { ComparisonFact, HangSubject, JointSubject, PickFinding, PickSubject, PointSubject } from '#trade';
import type { Comparison, HangResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { comparisonFact } from '../rules/index.js';

const codes = { over: 'over-rated-load', 'no rated value on file': 'no-rated-value', 'no rule on file': 'no-rule' } as const;

/** A comparison that fails or cannot be made: what was compared, and the rules that had a say. */
function findingOf(
  code: (typeof codes)[keyof typeof codes],
  at: PickSubject | JointSubject | HangSubject | PointSubject,
  fact: ComparisonFact,
  onTheWayUp: boolean,
  alsoAt: readonly JointSubject[] = [],
): PickFinding {
  const finding = {
    code,
    subjects: {
      at,
      alsoAt,
      models: 'model' in fact.part ? [{ kind: 'model', id: fact.part.model }] : [],
      rules: [...fact.factors.map((each) => each.rule), ...(fact.rule && fact.factors.length === 0 ? [fact.rule] : [])],
    },
    numbers: { value: fact.value, limit: fact.limit },
    date: null,
    compared: fact,
    onTheWayUp,
  };
  // The three codes have one shape.
  return finding as PickFinding;
}

export const comparedFindings = (
  { loadRule }: PlanInputs,
  at: PickSubject | HangSubject | PointSubject,
  comparisons: readonly Comparison[],
  onTheWayUp = false,
): readonly PickFinding[] =>
  comparisons.flatMap((each) => {
    const fact = comparisonFact(loadRule, each);
    return fact === null || each.verdict === 'within' ? [] : [findingOf(codes[each.verdict], at, fact, onTheWayUp)];
  });

/** One finding for each kind of part that carries too much: the worst joint, and which others. */
export function overloadedJoints({ loadRule }: PlanInputs, hang: HangResult): readonly PickFinding[] {
  const over = hang.joints.flatMap(({ position, comparisons }) =>
    comparisons.flatMap((each) => {
      const fact = comparisonFact(loadRule, each);
      return fact !== null && each.verdict === 'over' ? [{ position, fact, key: canonicalJson(fact.part) }] : [];
    }),
  );
  return [...new Set(over.map((each) => each.key))].map((key) => {
    const all = over.filter((each) => each.key === key);
    const worst = all.reduce((a, b) => (b.fact.value > a.fact.value ? b : a));
    const others = all.filter((one) => one !== worst).map((one) => jointOf(hang, one.position));
    return findingOf('over-rated-load', jointOf(hang, worst.position), worst.fact, false, others);
  });
}

/** While it is built: parts that carry more than they are rated for although the finished hang does not. */
export function overOnTheWayUp(inputs: PlanInputs, hang: HangResult): readonly PickFinding[] {
  const overAtTrim = hang.joints.some((joint) => joint.comparisons.some((each) => each.verdict === 'over'));
  const over = (hang.envelope?.comparisons ?? []).filter((each) => each.verdict === 'over' && !(overAtTrim && each.unit === 'N'));
  return comparedFindings(inputs, hangOf(hang), over, true);
}

export const hangOf = ({ hang, name }: HangResult): HangSubject => ({ kind: 'hang', id: hang, name });
export const jointOf = ({ hang, name }: HangResult, position: number): JointSubject => ({ kind: 'joint', hang, name, position });
export const pickOf = ({ hang, name }: HangResult, hole: string): PickSubject => ({ kind: 'pick', hang, name, hole });
