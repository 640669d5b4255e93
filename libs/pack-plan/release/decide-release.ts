import { type Clash, type InputChange, type Refusal, barsRelease, needsOfficer } from '#trade';
import type { PackPlan, ToldFinding } from '../contract/index.js';

/** Why a draft is not released, with what stands in the way; or that it is, and whether it says stop all the same. */
export type ReleaseDecision =
  | { readonly releases: false; readonly refusal: Refusal & { readonly code: 'release-clashes' } }
  | { readonly releases: false; readonly refusal: { readonly code: 'release-stale' }; readonly changed: readonly InputChange[] }
  | {
      readonly releases: false;
      readonly refusal: Refusal & { readonly code: 'release-barred' | 'release-says-stop' | 'release-needs-officer' };
      readonly stops: readonly ToldFinding[];
    }
  | { readonly releases: true; readonly saysStop: boolean };

const mostLetters = 300;

/**
 * Promises of others in the way come first, then inputs that changed, then what no reason releases, then stops without a reason. Other tours may
 * promise what they like as long as no promise clashes: changed promises alone make nothing stale. Stops of dates, ratings and places not judged need the
 * safety officer's own reason.
 */
export function decideRelease(
  plan: Pick<PackPlan, 'show' | 'findings'>,
  changes: readonly InputChange[],
  clash: Clash | undefined,
  despite: string,
  isOfficer: boolean,
): ReleaseDecision {
  if (clash) return { releases: false, refusal: { code: 'release-clashes', show: plan.show.name, clash } };
  const changed = changes.filter((each) => !('part' in each) || each.part.code !== 'bookings');
  if (changed.length > 0) return { releases: false, refusal: { code: 'release-stale' }, changed };
  const barred = plan.findings.filter((each) => barsRelease(each.code));
  if (barred.length > 0) return { releases: false, refusal: { code: 'release-barred' }, stops: barred };
  const stops = plan.findings.filter((each) => each.weight === 'stop');
  const ofOfficer = stops.filter((each) => needsOfficer(each.code));
  if (ofOfficer.length > 0 && !isOfficer)
    return { releases: false, refusal: { code: 'release-needs-officer', stops: ofOfficer.length }, stops: ofOfficer };
  if (stops.length > 0 && (despite === '' || despite.length > mostLetters))
    return { releases: false, refusal: { code: 'release-says-stop', stops: stops.length }, stops };
  return { releases: true, saysStop: stops.length > 0 };
}
