import type { Tour } from '#tour-file';

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
    id: slug(form.name),
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

export function newShow(form: Pick<NewTour, 'show' | 'venue' | 'timeZone' | 'from' | 'to'>, loadRule: string): Tour['shows'][number] {
  return {
    id: slug(form.show),
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

const slug = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .normalize('NFKD')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 60) || 'tour';
