/** The maker: the five results in their order, with or around an earlier plan. It knows every result; none of them knows it. */
export type { Improvement } from './improve-plan.js';
export { improvePlan, isOpen } from './improve-plan.js';
export { makePackPlan, makeSteadyPlan } from './make-pack-plan.js';
export { planLoads } from './plan-loads.js';
export { replanTrucks } from './replan-trucks.js';
