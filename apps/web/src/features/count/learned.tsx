import { formatNumber } from '#drawings';
import type { Sheet } from './use-count-sheet.js';
import { scrolls } from '../../ui/scrolls.js';

const perThousand = (rate: number): string => formatNumber(rate * 1000, 2);

/** Belief, count, and what is believed now; and what that does to the number of spares. */
export function Learned({ sheet }: { sheet: Sheet }) {
  const learning = sheet.lines.filter((line) => line.learned !== null);
  if (learning.length === 0)
    return <p>No line of this show learns: let it learn under Spares of the hardware trunk, on the page of the tour.</p>;
  return (
    <>
      <div {...scrolls}>
        <table className="tight">
          <thead>
            <tr>
              <th>Piece</th>
              <th className="num">Believed</th>
              <th className="num">Counted</th>
              <th className="num">Now</th>
              <th className="num">Spares</th>
            </tr>
          </thead>
          <tbody>
            {learning.map(({ key, item, spares, learned }) => (
              <tr key={key}>
                <td>
                  {item}, {key}
                </td>
                <td className="num">{perThousand(learned!.priorMean)}</td>
                <td className="num">
                  {learned!.losses} in {formatNumber(learned!.uses)}
                </td>
                <td className="num">{perThousand(learned!.posteriorMean)}</td>
                <td className="num">
                  {spares}
                  {spares === learned!.sparesByPriorAlone ? ', as before' : `, not ${learned!.sparesByPriorAlone}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="quiet">
        Losses in 1,000 uses: one piece fitted for one show is one use. Counts of every tour of your company are in it, and what the tour
        file says was counted before. Spares are those of the next plan of this show; “before” is by belief alone.
      </p>
    </>
  );
}
