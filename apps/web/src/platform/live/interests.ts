/** A query as the cache knows it. */
export interface Known {
  readonly queryKey: readonly unknown[];
}

/** Topics that a query is read again for at once, and topics that only make it stale: it is read again when somebody next looks. */
export interface Interests {
  readonly now: readonly string[];
  readonly later?: readonly string[];
}

type Text = string | undefined;

/** Topics by the first word of the key; topics are those that the tables tell (see the migration that lets them). */
const interestsByKind: Readonly<Record<string, (key: readonly Text[]) => Interests>> = {
  answering: () => ({ now: ['proposals'] }),
  'any-tour': () => ({ now: ['tour'], later: ['register'] }),
  // Who has Today open is told of what came to be barred as soon as the screens of the show are.
  attention: () => ({ now: ['booking', 'count', 'show', 'tour', 'register', 'catalogue', 'venue'] }),
  // The gate's answer hangs on what is on file of every item, on the rules, and on where the venues are.
  barred: ([, plan]) => ({ now: ['register', 'catalogue', 'tour', 'venue', `done/${plan}`] }),
  beginning: () => ({ now: ['people', 'catalogue', 'register', 'proposals', 'tour', 'show'] }),
  between: ([, tour]) => ({ now: [`show/${tour}`, `tour/${tour}`] }),
  'counted-use': () => ({ now: [], later: ['register', 'catalogue'] }),
  counts: ([, tour]) => ({ now: [`count/${tour}`, `tour/${tour}`] }),
  dates: () => ({ now: ['register', 'catalogue'], later: ['booking'] }),
  'dates choices': () => ({ now: ['tour'], later: ['register'] }),
  'dates print': () => ({ now: [], later: ['register', 'catalogue', 'booking'] }),
  'fault sheet': ([, item]) => ({ now: [`item/${item}`] }),
  'open faults': () => ({ now: ['floor', 'item'] }),
  depots: () => ({ now: [], later: ['register'] }),
  // Two plans that are on file: neither changes.
  difference: () => ({ now: [] }),
  'examination-rules': () => ({ now: ['catalogue'] }),
  extract: () => ({ now: [], later: ['register', 'catalogue'] }),
  fleet: () => ({ now: ['booking', 'tour'], later: ['register', 'show'] }),
  'hang-models': () => ({ now: ['catalogue'] }),
  'hardware-models': () => ({ now: ['catalogue'] }),
  'how-many-wait': () => ({ now: ['proposals'] }),
  holds: () => ({ now: ['booking'] }),
  // Read again by the clock: figures tell nobody.
  'house state': () => ({ now: [] }),
  deputies: () => ({ now: ['people'], later: ['tour'] }),
  'house-rules': () => ({ now: ['catalogue'] }),
  import: ([, id]) => ({ now: [`import/${id}`] }),
  imports: () => ({ now: ['import'] }),
  // A print is what it was when it was opened.
  inspection: () => ({ now: [], later: ['register', 'catalogue'] }),
  improvement: () => ({ now: ['planning'] }),
  item: ([, id]) => ({ now: [`item/${id}`, 'booking'], later: ['catalogue'] }),
  items: () => ({ now: ['register'] }),
  'kit of others': () => ({ now: ['register'] }),
  // Read when somebody looks; every write would tell of it.
  log: () => ({ now: [] }),
  'log people': () => ({ now: ['people'] }),
  'log seal': () => ({ now: [] }),
  'log tours': () => ({ now: ['tour'] }),
  me: () => ({ now: ['people'] }),
  models: () => ({ now: ['catalogue'] }),
  people: () => ({ now: ['people'] }),
  proposals: () => ({ now: ['proposals'] }),
  remedies: () => ({ now: ['booking'], later: ['register', 'show', 'tour'] }),
  'removed tours': () => ({ now: ['tour'] }),
  rigging: ([, plan]) => ({ now: [`rigging/${plan}`] }),
  // What stands in a plan never changes under its id.
  plan: () => ({ now: [] }),
  progress: ([, plan]) => ({ now: [`done/${plan}`] }),
  'prep sheet': ([, , tour]) => ({ now: [`floor/${tour}`], later: ['register'] }),
  'return sheet': ([, plan, tour, show]) => ({ now: [`floor/${tour}/${show}`, `done/${plan}`], later: ['register'] }),
  'row swap': () => ({ now: [] }),
  // Read when somebody looks: a sign-in tells nobody.
  sessions: () => ({ now: [] }),
  'ruled-places': () => ({ now: ['catalogue'] }),
  search: ([, tour, show]) => ({ now: [`planning/${tour}/${show}`] }),
  show: ([, tour, show]) => ({
    now: [`show/${tour}/${show}`, `tour/${tour}`, `count/${tour}`],
    later: ['register', 'catalogue', 'booking'],
  }),
  'shows-to-serve': () => ({ now: ['tour'] }),
  'tour-places': ([, tour]) => ({ now: [`tour/${tour}`, 'catalogue', 'venue'] }),
  'taken along': ([, tour]) => ({ now: [`tour/${tour}`, 'booking', 'show'] }),
  'whole-tour': ([, tour]) => ({ now: [`tour/${tour}`] }),
  tour: ([, tour]) => ({ now: [`tour/${tour}`, `show/${tour}`] }),
  'to set up': () => ({ now: ['people'] }),
  tours: () => ({ now: ['tour'] }),
  'travelling-kit': () => ({ now: ['register', 'catalogue'] }),
  'wear-rules': () => ({ now: ['catalogue'] }),
  visits: () => ({ now: ['visit'], later: ['tour'] }),
  'visit-list': () => ({ now: ['visit'], later: ['register', 'catalogue'] }),
  'visit-season': () => ({ now: ['visit'], later: ['register', 'catalogue', 'booking', 'tour'] }),
  'own-calendars': () => ({ now: ['people'] }),
  venues: () => ({ now: ['venue'], later: ['tour'] }),
  'waits-of-catalogue': () => ({ now: ['proposals', 'catalogue'] }),
  'waits-of-item': ([, id]) => ({ now: [`item/${id}`, 'proposals'] }),
  why: () => ({ now: [], later: ['register', 'catalogue', 'booking', 'tour'] }),
  'work-list': ([, plan]) => ({ now: [`done/${plan}`, 'register'] }),
};

/** Kinds of queries that are told of. */
export const toldKinds: readonly string[] = Object.keys(interestsByKind);

/** What a told change means for a query. `*` is anything. */
export function meaningOf(topics: readonly string[], { queryKey }: Known): 'read again' | 'stale' | 'nothing' {
  const key = queryKey.map((each) => (typeof each === 'string' ? each : undefined));
  const interests = interestsByKind[key[0] ?? '']?.(key);
  if (topics.includes('*')) return 'read again';
  if (!interests) return 'nothing';
  const isOne = (interest: string) => topics.some((topic) => concerns(topic, interest));
  if (interests.now.some(isOne)) return 'read again';
  return (interests.later ?? []).some(isOne) ? 'stale' : 'nothing';
}

/** `item` concerns `item/x`, and the other way round; `item/x` does not concern `item/xy`. */
function concerns(topic: string, interest: string): boolean {
  return topic === interest || topic.startsWith(`${interest}/`) || interest.startsWith(`${topic}/`);
}
