/** Before a show leaves: what a bench test looks at and leads to, splays as they are read back, a trunk as it is counted, what is picked where. */
export type { BenchCheck } from './bench.js';
export { afterBench, benchChecks } from './bench.js';
export type { PickPlace, Used } from './pick-list.js';
export { leavesTheHouse, pickList } from './pick-list.js';
export { splaysToSet, wrongSplays } from './splays.js';
export type { TrunkLine } from './trunk.js';
export { trunkLines, wrongCounts } from './trunk.js';
