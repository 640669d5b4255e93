import { useQuery } from '@tanstack/react-query';
import { graphql } from '#contracts';
import type { ExaminationRule } from '#tour-file';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Loaded } from '../../ui/page.js';
import { RuleLine } from './rule-line.js';
import { keyOf } from './rule-text.js';

const editionsQuery = graphql(`query ExaminationRuleEditions { examinationRuleEditions { id was wanted reason madeBy madeAt } }`);

interface Edition {
  readonly id: string;
  readonly was: ExaminationRule | null;
  readonly wanted: ExaminationRule | null;
  readonly reason: string | null;
  readonly madeBy: string;
  readonly madeAt: string;
}

/** Of one rule the changes that led to it, newest first: its key changes with it, so that each is followed back to what was before. */
function editionsOf(rule: ExaminationRule, editions: readonly Edition[]): readonly Edition[] {
  let key: string | null = keyOf(rule);
  return editions.filter(({ was, wanted }) => {
    if (key === null || !wanted || keyOf(wanted) !== key) return false;
    key = was ? keyOf(was) : null;
    return true;
  });
}

/** What holds no longer or otherwise: every change with the rule before and after, who made it, when and why. */
export function RuleEditions({ rule }: { rule?: ExaminationRule }) {
  const query = useQuery({
    queryKey: ['examination-rules', 'editions'],
    queryFn: async () => (await request(editionsQuery)).examinationRuleEditions as readonly Edition[],
  });
  return (
    <Loaded query={query}>
      {(all) => {
        const shown = rule ? editionsOf(rule, all) : all;
        if (shown.length === 0) return <p className="quiet">No change is on file: it stands as it came.</p>;
        return (
          <ol className="plain">
            {shown.map((each) => (
              <li key={each.id}>
                <EditionPart edition={each} />
              </li>
            ))}
          </ol>
        );
      }}
    </Loaded>
  );
}

function EditionPart({ edition: { was, wanted, reason, madeBy, madeAt } }: { edition: Edition }) {
  const what = !was ? 'put on file' : wanted ? 'changed' : 'taken out';
  return (
    <details>
      <summary>
        {momentOf(madeAt)}: {what} by {madeBy}
        {reason ? `: ${reason}` : ''}
      </summary>
      <p>Before: {was ? <RuleLine rule={was} /> : 'nothing'}</p>
      <p>After: {wanted ? <RuleLine rule={wanted} /> : 'nothing'}</p>
      {was && <WholeRule rule={was} title="The edition before, whole" />}
    </details>
  );
}

/** Every field of a rule as it stood. */
const WholeRule = ({ rule, title }: { rule: ExaminationRule; title: string }) => (
  <table>
    <caption>{title}</caption>
    <tbody>
      {fieldsOf(rule).map(([name, value]) => (
        <tr key={name}>
          <th scope="row">{name}</th>
          <td>{value}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

const names: Readonly<Record<string, string>> = {
  ...{
    jurisdiction: 'place',
    check: 'what is made',
    basis: 'when',
    every: 'after how many',
    who: 'by whom',
    mayExamine: 'who may examine',
  },
  ...{ record: 'a record', list: 'holds the list of', fields: 'holds', retention: 'a record is kept', atLeast: 'for' },
  ...{ untilNextReport: 'until the next report', whileInUse: 'while it is in use', source: 'stands in', status: 'was it read there' },
};

const fieldsOf = (value: object, before = ''): [string, string][] =>
  Object.entries(value).flatMap(([key, each]: [string, unknown]): [string, string][] => {
    const name = `${before}${names[key] ?? key}`;
    if (typeof each === 'object' && each !== null && !Array.isArray(each)) return fieldsOf(each, `${name}: `);
    return [[name, Array.isArray(each) ? each.join(', ') : each === true ? 'yes' : String(each)]];
  });
