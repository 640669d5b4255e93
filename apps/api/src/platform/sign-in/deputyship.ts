/** In the place of a safety officer, on this day; for one depot or one tour, or everywhere. */
export interface Deputyship {
  readonly id: string;
  readonly officerId: string;
  /** Name of the safety officer. */
  readonly officer: string;
  /** Last day, ISO 8601. */
  readonly until: string;
  readonly depot: string | null;
  readonly tourId: string | null;
}
