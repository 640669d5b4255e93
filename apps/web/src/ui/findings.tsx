import type { ToldFinding } from '#pack-plan';
import type { Section } from '#trade';
import { english, saidOnce } from '#words';
import { FindingNote } from './finding-note.js';

const order = { stop: 0, look: 1, agrees: 2 };

/** What the plan has to say of one of its results, beside it; stops first. */
export function Findings({ findings, section }: { findings: readonly ToldFinding[]; section: Section }) {
  const own = saidOnce(
    findings.filter((each) => each.section === section),
    english,
  ).toSorted((a, b) => order[a.weight] - order[b.weight]);
  return (
    <>
      {own.map((each, index) => (
        <FindingNote key={index} of={each} />
      ))}
    </>
  );
}
