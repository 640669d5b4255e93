import { type SeasonAnswer, solveSeason, verifySeason } from '#inspection-calendar';
import { planningTask } from '../../planning/solve/planning-task.js';
import { type NamedItem, type SeasonSubject, loadSeason } from './season-snapshot.js';

/** A season as it is told: the answer, without the visits that are asked about where any are, and the names of its items. */
export interface SolvedSeason {
  readonly answer: SeasonAnswer;
  /** The answer were the visits of `without` not to be. */
  readonly without: SeasonAnswer | null;
  readonly names: readonly NamedItem[];
}

/** Visits planned over a season and all tours, by what is on file now; checked again before they are told. */
export default planningTask({
  load: async (db, subject: SeasonSubject & { readonly today: string }) => ({
    scope: null,
    inputs: await loadSeason(db, subject, subject.today),
  }),
  dependsOn: () => null,
  solve: ({ season, names }, { without }, limits): SolvedSeason => {
    const solved = (problem: typeof season): SeasonAnswer => {
      const answer = solveSeason(problem, limits.integerProgram);
      const [fault] = verifySeason(problem, answer);
      if (fault !== undefined) throw new Error(`the visits do not serve: ${fault}`);
      return { ...answer, states: [] };
    };
    const left = season.visits.filter((each) => !without.includes(each.id));
    return { answer: solved(season), without: left.length === season.visits.length ? null : solved({ ...season, visits: left }), names };
  },
});
