import type { ToldFinding } from '#pack-plan';
import type { Section, Weight } from '#trade';

const words = { agrees: 'agrees', look: 'look at this', stop: 'stop' } as const;

/** One sentence with its state as shape and word, never as a colour alone. */
export function Note({ weight, children }: { weight: Weight; children: React.ReactNode }) {
  return (
    <p className={`note ${weight}`}>
      <b>{words[weight]}</b> {children}
    </p>
  );
}

/** What the plan has to say of one of its results, beside it; stops first. */
export function Notes({ findings, section }: { findings: readonly ToldFinding[]; section: Section }) {
  const order = { stop: 0, look: 1, agrees: 2 };
  const own = findings.filter((each) => each.section === section).sort((a, b) => order[a.weight] - order[b.weight]);
  return (
    <>
      {own.map((each, index) => (
        <Note key={index} weight={each.weight}>
          {each.sentence}
        </Note>
      ))}
    </>
  );
}
