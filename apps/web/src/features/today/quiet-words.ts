interface Judged {
  readonly hasTours: boolean;
  readonly hasItems: boolean;
  /** Shows that are not over. */
  readonly shows: number;
  /** Those of them with a plan: of the others nothing was judged. */
  readonly planned: number;
}

const shown = (count: number): string => (count === 1 ? '1 show' : `${count} shows`);

/** Where there is nothing to say to a role: what was judged, and what was not. Where nothing was judged, nothing is in order. */
export function quietWords(role: string, { hasTours, hasItems, shows, planned }: Judged): string {
  if (!hasItems && role === 'safety') return 'Nothing is on file: there is no item whose examinations could run out.';
  if (!hasTours && role === 'safety') return 'Nothing was judged: no tour is on file, so there is no day to be in date on.';
  if (!hasTours) return 'Nothing is on file: there is no tour, and no show to prepare or to plan.';
  if (shows === 0) return 'Nothing was judged: every show on file is over.';
  if (planned === 0) return `Nothing was judged: of ${shown(shows)} ahead none has a plan.`;
  const rest = planned === shows ? '' : ` ${shown(shows - planned)} ahead without a plan: nothing was judged there.`;
  if (role === 'safety') return `In the plans of ${shown(planned)}, everything that lifts is in date.${rest}`;
  if (role === 'warehouse') return `In the plans of ${shown(planned)}, nothing is left to prepare.${rest}`;
  return `In the plans of ${shown(planned)}, nothing is left to do.${rest}`;
}
