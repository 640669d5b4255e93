/** One recommendation of a cheat sheet of OWASP: where it stands, what the house does, and what shows it. */
export interface Recommendation {
  readonly section: string;
  readonly asks: string;
  /** What the house does; where it does otherwise, or nothing, why. */
  readonly house: string;
  readonly shows: () => Promise<void> | void;
}

/** The sheet as a table of tests, one a row. */
export function eachOf(sheet: string, address: string, rows: readonly Recommendation[]): void {
  describe(`OWASP, ${sheet} (${address})`, () => {
    it.each(rows.map((row) => [`${row.section}: ${row.asks} Here: ${row.house}`, row.shows] as const))('%s', async (_name, shows) => {
      expect.hasAssertions();
      await shows();
    });
  });
}
