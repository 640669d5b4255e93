import type { Working } from '#pack-plan';

/** The terms that made a number, the rule, the source. */
export function Why({ of }: { of: Working }) {
  return (
    <details>
      <summary>How this was computed</summary>
      <div className="working">
        <ul className="plain">
          {of.terms.map((term, index) => (
            <li key={index}>
              {term.what}: {Math.round(term.value * 100) / 100} {term.unit}
            </li>
          ))}
        </ul>
        <p>{of.rule}</p>
        <p className="quiet">Source: {of.source}</p>
      </div>
    </details>
  );
}
