import { standardGravityMps2 } from '#kernel';
import { type PicksResult, pointFacts } from '#pack-plan';
import { table } from '../paper/index.js';
import { type Node, type Units, formatForce, formatLength, formatNumber, node } from '../tree/index.js';

/** Where measures start, who is below, and what the wind does. */
export function siteNodes(picks: PicksResult): readonly Node[] {
  const { site } = picks;
  if (!site) return [];
  const limits = [...new Set(pointFacts(picks).map((each) => each.windLimitMps))];
  const known = limits.flatMap((each) => (each === null ? [] : [each]));
  const wind = site.isOutdoor
    ? `Outdoors. In service up to ${known.length === 0 ? 'a wind speed that is not on file' : `${Math.min(...known)} m/s (rigging system)`}; beyond: ${site.windAction ?? 'what is done then is not on file'}.`
    : 'Indoors: no wind.';
  return [
    node(
      'p',
      {},
      `Datum 0, 0: ${site.datum ?? 'where it is on the stage is not on file'}. x to the audience, y to the left of somebody who looks to the audience. Persons below the load: ${site.personsBelow ? 'yes' : 'no'}. Moved over persons: ${site.movesOverPersons ? 'yes' : 'no'}. ${useCase(site)}${wind}`,
    ),
  ];
}

/** Which use case of the regime loads are compared with, and how it was chosen. */
function useCase({ useCase: use }: NonNullable<PicksResult['site']>): string {
  if (use === undefined) return '';
  if (use === null) return 'Use case: none on file for this show. ';
  return `Use case, compared with: ${use.name} (${use.isNamed ? 'named by the show' : 'by the persons below'}). `;
}

/** Sums on every truss or beam against what it may carry in all; nothing where none is named. */
export function beamNodes({ site, loadRule }: PicksResult, units: Units): readonly Node[] {
  if (!site || site.beams.length === 0) return [];
  const length = (mm: number | null) => (mm === null ? 'not on file' : formatLength(mm, units));
  return [
    node('h2', {}, 'Sums on trusses and beams'),
    node(
      'div',
      { class: 'dense' },
      table(
        [
          'Truss or beam',
          { right: 'Steel high / low' },
          'Points',
          { right: 'At rest' },
          { right: 'Worst' },
          { right: `× ${Number(loadRule.dynamicFactor.toFixed(4))}` },
          { right: 'Aside' },
          'Allowed, by',
          'Compared',
        ],
        site.beams.map((beam) => {
          const [compared] = beam.comparisons;
          const limit = compared?.limit ?? null;
          return [
            beam.name,
            { right: `${length(beam.highSteelMm)} / ${length(beam.lowSteelMm)}` },
            beam.points.join('; '),
            { right: formatForce(beam.restN, units) },
            { right: formatForce(beam.worstN, units) },
            { right: formatForce(beam.worstDynamicN, units) },
            { right: beam.asideDeg === null ? '–' : `${formatForce(beam.asideN, units)} toward ${formatNumber(beam.asideDeg)}°` },
            limit === null
              ? 'not on file'
              : `${formatForce(limit * standardGravityMps2, units)}, ${beam.allowedBy ?? 'by whom is not on file'}`,
            compared?.verdict ?? '',
          ];
        }),
      ),
    ),
    node(
      'p',
      {},
      'All points of a beam at their worst, as if everything on it moved together. Its own mass and what others hang there come on top.',
    ),
  ];
}
