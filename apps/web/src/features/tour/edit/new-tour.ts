import { type Show, type Tour, freeId, idOf } from '#tour-file';

export interface NewTour {
  readonly name: string;
  readonly depot: string;
  readonly prepFrom: string;
  readonly returnTo: string;
  readonly jurisdiction: string;
  readonly show: string;
  readonly venue: string;
  readonly timeZone: string;
  readonly from: string;
  readonly to: string;
}

/** A tour with one show and one empty hang, to be filled in the hang editor; what is missing in it is said when it is saved there. */
export function newTour(form: NewTour, loadRule: string): Tour {
  return {
    id: idOf(form.name),
    name: form.name.trim(),
    depot: form.depot.trim(),
    prepFrom: form.prepFrom,
    returnTo: form.returnTo,
    jurisdictions: [form.jurisdiction.trim()],
    visitDays: [],
    trucks: [],
    freight: [],
    spares: [],
    shows: [newShow(form, loadRule)],
  };
}

/** `taken`: ids that other shows of the tour have, or had. */
export function newShow(
  form: Pick<NewTour, 'show' | 'venue' | 'timeZone' | 'from' | 'to'>,
  loadRule: string,
  taken: readonly string[] = [],
): Show {
  return {
    id: freeId(form.show, taken, 'show'),
    name: form.show.trim(),
    venue: form.venue.trim(),
    timeZone: form.timeZone.trim(),
    from: form.from,
    to: form.to,
    loadRule,
    personsBelow: true,
    hangs: [],
  };
}

/** The same hangs at another place on other days, of the same design in its tour; what was wished of its trucks stays where it was. */
export function copiedShow(of: Show, form: Pick<NewTour, 'show' | 'venue' | 'timeZone' | 'from' | 'to'>, taken: readonly string[]): Show {
  const { loading: _loading, ...rest } = of;
  return { ...rest, ...newShow(form, of.loadRule, taken), personsBelow: of.personsBelow, hangs: of.hangs };
}

/** The shows of a tour in the order of their days. */
export const byDay = (shows: readonly Show[]): Show[] => [...shows].sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
