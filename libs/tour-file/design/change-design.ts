import { type Design, type Hang, type Show, type Tour, hangName } from '../shapes/index.js';
import { fieldsBetween, same } from './differences.js';

/** What became of a show when its design changed. */
export interface AtShow {
  readonly show: string;
  readonly name: string;
  readonly from: string;
  /** What differed here and was changed in the design as well: it stays as this show has it. */
  readonly kept: readonly KeptAtShow[];
}

export interface KeptAtShow {
  readonly hang: string;
  /** Left out where the hang as a whole stays, or stays away. */
  readonly field?: keyof Hang;
}

/**
 * A design with other hangs, and the shows that follow it. What a show has of its own stays: field by field of each hang, what the show left as the design
 * had it follows, what differs there does not, and is told where the design changed it too. Shows that ended before `today` stay as they hung.
 */
export function changeDesign(
  tour: Tour,
  designId: string,
  hangs: readonly Hang[],
  today: string,
): { readonly tour: Tour; readonly followed: readonly AtShow[]; readonly over: readonly Show[] } {
  const before = tour.designs?.find((each) => each.id === designId);
  if (!before) return { tour, followed: [], over: [] };
  const followed: AtShow[] = [];
  const using = tour.shows.filter((each) => each.design === designId);
  const shows = tour.shows.map((show) => {
    if (show.design !== designId || show.to < today) return show;
    const kept: KeptAtShow[] = [];
    const next = hangsAfter(show.hangs, before.hangs, hangs, kept);
    if (!same(next, show.hangs) || kept.length > 0) followed.push({ show: show.id, name: show.name, from: show.from, kept });
    return { ...show, hangs: next };
  });
  const designs = (tour.designs ?? []).map((each): Design => (each === before ? { ...each, hangs: [...hangs] } : each));
  return { tour: { ...tour, designs, shows }, followed, over: using.filter((each) => each.to < today) };
}

/** In the order of the design; what the show has beside it follows. */
function hangsAfter(own: readonly Hang[], before: readonly Hang[], next: readonly Hang[], kept: KeptAtShow[]): Hang[] {
  const find = (all: readonly Hang[], id: string): Hang | undefined => all.find((each) => each.id === id);
  const followed = next.flatMap((hang): Hang[] => {
    const [here, was] = [find(own, hang.id), find(before, hang.id)];
    if (here) return [was ? merged(here, was, hang, kept) : here];
    // Left out here: it stays away, also where the design changed it.
    if (was && !same(was, hang)) kept.push({ hang: hangName(was) });
    return was ? [] : [hang];
  });
  const beside = own.filter((hang) => {
    if (find(next, hang.id)) return false;
    const was = find(before, hang.id);
    if (!was) return true;
    if (same(was, hang)) return false;
    // Taken out of the design, and not as the design had it: somebody wanted it here.
    kept.push({ hang: hangName(hang) });
    return true;
  });
  return [...followed, ...beside];
}

function merged(here: Hang, was: Hang, next: Hang, kept: KeptAtShow[]): Hang {
  const own = fieldsBetween(here, was);
  for (const field of own)
    if (!same(next[field], was[field]) && !same(next[field], here[field])) kept.push({ hang: hangName(here), field });
  const entries = [...new Set([...Object.keys(next), ...Object.keys(here)])].map((key) => {
    const field = key as keyof Hang;
    return [field, own.includes(field) ? here[field] : next[field]] as const;
  });
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined)) as Hang;
}
