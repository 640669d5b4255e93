import { formatMass } from '#drawings';
import type { TruckResultOne } from '#pack-plan';
import { english } from '#words';
import { useSettings } from '../../../platform/settings.js';

type InRow = NonNullable<TruckResultOne['afterRows']>[number][number];

const shareOf = ({ loadKg, limitKg }: InRow): number => (limitKg === null ? -1 : loadKg / limitKg);

/** What stands on the axles once this row is in, the one nearest its limit first. */
export function AxlesAfter({ truck, row }: { truck: TruckResultOne; row: number }) {
  const { units } = useSettings();
  const [nearest, ...others] = [...(truck.afterRows?.[row - 1] ?? [])].sort((a, b) => shareOf(b) - shareOf(a));
  if (!nearest) return null;
  const words = ({ axle, loadKg, limitKg }: InRow) =>
    `${english.axles[axle]} ${formatMass(loadKg, units)}${limitKg === null ? ', no limit on file' : ` of ${formatMass(limitKg, units)}`}`;
  const isOver = (each: InRow) => shareOf(each) > 1;
  return (
    <div className={[nearest, ...others].some(isOver) ? 'axles over' : 'axles'}>
      <p>
        {isOver(nearest) && '■ Over: '}After this row: {words(nearest)}.
      </p>
      <details>
        <summary>The other axles; a weighbridge decides</summary>
        <ul>
          {others.map((each) => (
            <li key={each.axle}>
              {isOver(each) && '■ Over: '}
              {words(each)}
            </li>
          ))}
        </ul>
      </details>
    </div>
  );
}
