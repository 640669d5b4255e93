import { Link } from 'react-router';
import { type ToldFinding, subjectsOf } from '#pack-plan';
import { type RuleSubject, type Subject, placeName } from '#trade';
import { english, nameOf } from '#words';
import { Note } from './notes.js';

/** A finding; opened it shows what it is about, its figures, and the rules that had a say with the place where each stands. */
export function FindingNote({ of }: { of: ToldFinding }) {
  const subjects = subjectsOf(of);
  const rules = subjects.filter((each): each is RuleSubject => each.kind === 'rule');
  const others = subjects.filter((each) => each.kind !== 'rule' && each.kind !== 'quote');
  const numbers = Object.entries(of.fact.numbers);
  if (subjects.length + numbers.length === 0) return <Note weight={of.weight}>{of.sentence}</Note>;
  return (
    <>
      <Note weight={of.weight}>{of.sentence}</Note>
      <details className="why">
        <summary>What this is about{rules.length > 0 ? ', and by which rule' : ''}</summary>
        <div className="working">
          {others.length > 0 && (
            <p>
              {others.map((each, index) => (
                <span key={index}>
                  {index > 0 && ', '}
                  <SubjectLink of={each} />
                </span>
              ))}
            </p>
          )}
          {numbers.length > 0 && (
            <ul className="plain">
              {numbers.map(([name, value]) => (
                <li key={name}>{english.figure(name, value)}</li>
              ))}
            </ul>
          )}
          {rules.map((rule, index) => (
            <Rule key={index} of={rule} />
          ))}
        </div>
      </details>
    </>
  );
}

function Rule({ of: { title, jurisdiction, edition, field, source, status } }: { of: RuleSubject }) {
  return (
    <p>
      Rule: {title} ({placeName(jurisdiction)}
      {edition === null ? '' : `, edition ${edition}`})
      {field === null ? (
        ''
      ) : (
        <>
          , <code>{field}</code>
        </>
      )}
      .{' '}
      <span className="quiet">
        Source: {source}
        {status === 'found' ? '' : ` (${status})`}
      </span>
    </p>
  );
}

/** Things of the register open there, things of the show where they stand on its page. */
function SubjectLink({ of }: { of: Subject }) {
  const name = nameOf(english, of);
  if (of.kind === 'item' || of.kind === 'cart' || of.kind === 'truck' || of.kind === 'piece')
    return <Link to={`/register/${encodeURIComponent(of.id)}`}>{name}</Link>;
  if (of.kind === 'hang') return <a href={`#hang-${of.id}`}>{name}</a>;
  if (of.kind === 'joint' || of.kind === 'pick') return <a href={`#hang-${of.hang}`}>{name}</a>;
  return <>{name}</>;
}
