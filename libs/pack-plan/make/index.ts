/** The maker: the five results in their order, with or around an earlier plan. It knows every result; none of them knows it. */
export { makePackPlan, makeSteadyPlan } from './make-pack-plan.js';
export { replanTrucks } from './replan-trucks.js';
