export interface Bench {
  readonly does: string;
  /** The module's `run(args, root)` prints its lines and gives the exit code. */
  readonly load: () => Promise<{ run: (args: readonly string[], root: string) => number | Promise<number> }>;
}

/** Name -> bench; the list that `npm run bench` prints. */
export const benches: Record<string, Bench> = {
  plan: { does: 'the demo show planned whole: [--rounds N]', load: () => import('./bench/plans/plan.js') },
  'same-plan': {
    does: 'the demo planned on the idle machine and beside busy loops, byte for byte the same: [--busy N]',
    load: () => import('./bench/plans/same-plan.js'),
  },
  damaged: {
    does: 'the demo tour damaged at random, answered every way: [--tours N] [--first SEED] [--seconds S]',
    load: () => import('./bench/plans/damaged.js'),
  },
  mutants: {
    does: 'seeded small faults in the engines and decisions, and how many the tests see: [--engines hang-statics,decisions] [--mutants N] [--from N] [--seed N] [--at PATH:LINE,...]',
    load: () => import('./bench/engines/mutants.js'),
  },
  layout: {
    does: 'sources a folder, imports between folders, circles of folders: [--of DIR]',
    load: () => import('./bench/layout.js'),
  },
  'hang-statics': { does: 'random hangs: [--hangs N] [--boxes N]', load: () => import('./bench/engines/hang-statics.js') },
  'hang-limits': {
    does: 'seeded hangs with limits between rest and worst, which must stop, and above, which must not; shared points: [--hangs N] [--shows N] [--first SEED]',
    load: () => import('./bench/limits/hang-limits.js'),
  },
  'double-taps': {
    does: 'pairs of taps 50 to 600 ms apart on a box move, and how many marked a second: [--pairs N] [--seed N]',
    load: () => import('./bench/carts/double-taps.js'),
  },
  'cart-allocation': {
    does: 'cart-allocation cases with known optima: --data DIR [--work N] [--seconds S]',
    load: () => import('./bench/carts/cart-allocation.js'),
  },
  blocks: {
    does: 'planning-competition blocks problems: --data DIR [--work N] [--seconds S] [--most BLOCKS], or random ones: --towers 100,200 [--seeds N]',
    load: () => import('./bench/carts/blocks.js'),
  },
  'cart-allocation-scale': {
    does: 'seeded fleets of 20 to 10,000 carts: [--carts 250,1000] [--seeds N] [--work N] [--seconds S] [--clock processor]',
    load: () => import('./bench/carts/cart-allocation-scale.js'),
  },
  'tour-moves': {
    does: 'seeded tours planned as a whole and show by show, and a bound: [--shows 5,10] [--carts N] [--tours N] [--tries N] [--seconds S] [--clock processor]',
    load: () => import('./bench/carts/tour-moves.js'),
  },
  bookings: {
    does: 'racing holds of the same 50 boxes through the API: [--attempts N] [--at-once N]',
    load: () => import('./bench/house/bookings.js'),
  },
  responsive: {
    does: 'requests while four plans and a large truck load are made, beside idle: [--rounds N] [--pieces N]',
    load: () => import('./bench/house/responsive.js'),
  },
  hostile: {
    does: 'twenty kinds of hostile requests while one person works, beside idle: [--requests N] [--at-once N] [--seed N]',
    load: () => import('./bench/house/hostile.js'),
  },
  starts: {
    does: 'starts at once on an empty database: all come up, one fills it: [--rounds N] [--at-once N]',
    load: () => import('./bench/restarts/starts.js'),
  },
  kills: {
    does: 'the house, its database, its worker or all killed during writes: none lost, every answer true: [--kills N] [--writers N] [--seed N]',
    load: () => import('./bench/restarts/kills.js'),
  },
  several: {
    does: 'two APIs, two workers, one PostgreSQL, started together on nothing, one killed at random during use: [--kills N] [--writers N] [--seed N]',
    load: () => import('./bench/restarts/several.js'),
  },
  import: {
    does: 'a large CSV file comes in while others work, beside the idle house: [--rows N] [--rounds N] [--accept yes]',
    load: () => import('./bench/house/import.js'),
  },
  pages: {
    does: 'the statements of the log and of the list of dates in a made house, timed by the database: [--items N] [--rounds N]',
    load: () => import('./bench/house/pages.js'),
  },
  load: {
    does: 'people at work in a large house, beside a small one, an action each every two seconds: [--items N] [--people N] [--seconds S]',
    load: () => import('./bench/house/load.js'),
  },
  'planning-kills': {
    does: 'workers killed in the middle of plans, which arrive all the same, once: [--kills N] [--seed N]',
    load: () => import('./bench/restarts/planning-kills.js'),
  },
  register: {
    does: 'each screen in houses of growing size: [--items 1000,10000,100000] [--rounds N]',
    load: () => import('./bench/house/register.js'),
  },
  bytes: { does: 'bodies of a tick, a poll, the show page and the first load, compressed', load: () => import('./bench/house/bytes.js') },
  floor: {
    does: 'the floor on a phone four times slower, its first page over slow 4G, from a code read to the answer: [--rounds N]',
    load: () => import('./bench/house/floor.js'),
  },
  visits: {
    does: 'seeded seasons of 40 tours, examiner visits planned and proved: [--seasons N] [--first SEED] [--items N] [--visits N]',
    load: () => import('./bench/visits/visits.js'),
  },
  due: {
    does: 'screens of dates and visits in a large house with ten years of records, times at the database: [--items N] [--rounds N]',
    load: () => import('./bench/visits/due.js'),
  },
  dates: {
    does: 'months, periods and days in time zones beside a general-purpose date library: [--pairs N] [--seed N]',
    load: () => import('./bench/visits/dates.js'),
  },
  'truck-pack': {
    does: 'published container problems: --data DIR [--seconds S] [--classes BR1,BR3] [--first N] [--support full] [--clock processor]',
    load: () => import('./bench/trucks/truck-pack.js'),
  },
  'truck-rows': {
    does: 'seeded tours loaded in rows: [--tours N] [--first SEED] [--rounds N] [--seconds S]',
    load: () => import('./bench/trucks/truck-rows.js'),
  },
  'truck-small': {
    does: 'small loads in rows beside the shortest of any arrangement, proved: [--pieces 8,12] [--loads N] [--nodes N]',
    load: () => import('./bench/trucks/truck-small.js'),
  },
  'truck-odd': {
    does: 'odd but valid trucks and freight: answered, checked, equal for equal work: [--cases N] [--work STEPS]',
    load: () => import('./bench/trucks/truck-odd.js'),
  },
  'truck-seconds': {
    does: 'large fleets answered within 1.5 times the seconds given, no fewer aboard than a plain first fit: [--seconds 1,3,10] [--fleets 500x8,2000x40]',
    load: () => import('./bench/trucks/truck-seconds.js'),
  },
  'truck-growth': {
    does: 'growing freight in rows and freely: [--pieces 50,200,800,2000] [--seconds S] [--rounds N]',
    load: () => import('./bench/trucks/truck-growth.js'),
  },
};
