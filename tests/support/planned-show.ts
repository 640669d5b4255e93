import { planLoads } from '#pack-plan';
import { demoTour } from './demo-tour.js';

/** The loads of the first show of the demo with its hangs changed, on carts that are not chosen yet, and what they stop for. */
export function plannedShow(change: (hangs: any[], file: any) => void = () => undefined) {
  const file = demoTour((written: any) => change(written.tour.shows[0].hangs, written));
  const { picks, findings } = planLoads(file, 'quayside');
  return { picks, findings, stops: findings.filter((each) => each.weight === 'stop') };
}
