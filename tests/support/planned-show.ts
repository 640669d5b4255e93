import { gatherInputs } from '#pack-plan';
import { english } from '#words';
import { wantedLoads } from '../../libs/pack-plan/carts/index.js';
import type { CartsResult } from '../../libs/pack-plan/contract/index.js';
import { tellFindings } from '../../libs/pack-plan/make/tell-findings.js';
import { pickFindings } from '../../libs/pack-plan/picks/pick-findings.js';
import { pointFindings, withStructure } from '../../libs/pack-plan/points/index.js';
import { planPicks } from '../../libs/pack-plan/picks/plan-picks.js';
import { demoTour } from './demo-tour.js';

/** The loads of the first show of the demo with its hangs changed, on carts that are not chosen yet. */
export function plannedShow(change: (hangs: any[], file: any) => void = () => undefined) {
  const inputs = gatherInputs(
    demoTour((file: any) => change(file.tour.shows[0].hangs, file)),
    'quayside',
  );
  const loads = wantedLoads(inputs);
  const carts = {
    loads: loads.map((load) => ({
      id: load.id,
      hang: load.hang.id,
      cart: null,
      cartModel: null,
      boxes: load.positions.map((position) => ({ position, serial: null, splayDeg: load.hang.boxes[position - 1]!.splayDeg })),
    })),
  } as unknown as CartsResult;
  const picks = withStructure(inputs, planPicks(inputs, loads, carts, []));
  const findings = tellFindings([...pickFindings(inputs, picks), ...pointFindings(inputs, picks)], english);
  return { inputs, picks, findings, stops: findings.filter((each) => each.weight === 'stop') };
}
