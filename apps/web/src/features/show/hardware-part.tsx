import { percent } from '#drawings';
import type { PackPlan } from '#pack-plan';
import { Notes } from '../../ui/notes.js';
import { Part } from '../../ui/page.js';
import { Why } from './hang-parts.js';

export function HardwarePart({ plan }: { plan: PackPlan }) {
  const { hardware } = plan;
  return (
    <Part
      number={3}
      title="Hardware"
      id="hardware"
      margin={
        <>
          <Notes findings={plan.findings} section="hardware" />
          {hardware.trunkLevel !== null && (
            <p className="note">
              <b>All lines together:</b> {percent(hardware.trunkLevel)} of tours without a shortage.
            </p>
          )}
          <p className="caution">{hardware.caution}</p>
        </>
      }
    >
      <div className="scroll">
        <table>
          <thead>
            <tr>
              <th>Piece</th>
              <th className="num">Fitted</th>
              <th className="num">With its box</th>
              <th className="num">With its cart</th>
              <th className="num">Loose</th>
              <th className="num">Spares</th>
              <th className="num">Enough for</th>
              <th className="num">On hand</th>
              <th>Trunk</th>
            </tr>
          </thead>
          <tbody>
            {hardware.lines.map((line) => (
              <tr key={line.key}>
                <td>
                  {line.item}, {line.model}
                  {line.size ? `, ${line.size}` : ''}
                  <Why of={line.working} />
                </td>
                <td className="num">{line.fitted}</td>
                <td className="num">{line.withBox}</td>
                <td className="num">{line.withCart}</td>
                <td className="num">{line.loose}</td>
                <td className="num">{line.spares}</td>
                <td className="num">{line.levelReached === null ? 'not known' : percent(line.levelReached)}</td>
                <td className="num">
                  {line.onHand}
                  {line.missing > 0 ? `, ${line.missing} missing` : ''}
                </td>
                <td>{line.trunks.join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Part>
  );
}
