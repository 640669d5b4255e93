/** Who is signed in on this screen. */
export interface Person {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  /** Whose place this person takes today; of one depot, of one tour, or everywhere. */
  readonly deputyships: readonly Deputyship[];
}

export interface Deputyship {
  readonly officer: string;
  readonly until: string;
  readonly depot?: string | null;
  readonly tourId?: string | null;
}

/** Whether the acts of the safety officer are shown: to that officer, and to a deputy. Of a part of the house the house itself looks whether it is the part. */
export const actsAsOfficer = ({ role, deputyships }: Person, of: 'the house' | 'a part' = 'a part'): boolean =>
  role === 'safety' || deputyships.some((each) => of === 'a part' || (!each.depot && !each.tourId));
