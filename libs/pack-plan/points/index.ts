/** The points of the structure with everything that pulls at each: the one place where loads of several picks, legs and anchors become loads of a point. */
export { pointFindings } from './point-findings.js';
export type { StructurePoint } from './structure-points.js';
export { structurePoints } from './structure-points.js';
export { withStructure } from './with-structure.js';
export type { PointFacts } from './point-facts.js';
export { pointFacts } from './point-facts.js';
