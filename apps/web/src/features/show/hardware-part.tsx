import { Link } from 'react-router';
import { formatLength, learnedWords, notToBeUsed, percent, takenWords, zeroSpares } from '#drawings';
import type { HardwareLine, HardwareResult } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { Findings } from '../../ui/findings.js';
import { Loaded, Part } from '../../ui/page.js';
import { useNarrow } from '../../ui/use-narrow.js';
import { Why } from '../../ui/why.js';
import { useCarts, useFindings, useHardware } from '../plan/use-plan-parts.js';
import { scrolls } from '../../ui/scrolls.js';

export function HardwarePart({ planId, base }: { planId: string; base: string }) {
  const query = useHardware(planId);
  return <Loaded query={query}>{(hardware) => <Hardware planId={planId} hardware={hardware} base={base} />}</Loaded>;
}

function Hardware({ planId, hardware, base }: { planId: string; hardware: HardwareResult; base: string }) {
  const findings = useFindings(planId).data ?? [];
  const narrow = useNarrow();
  return (
    <Part
      number={3}
      title="Hardware"
      id="hardware"
      margin={
        <>
          <Findings findings={findings} section="hardware" />
          {hardware.trunk.level !== null && (
            <p className="note">
              <b>All lines with losses on file together:</b> {percent(hardware.trunk.level)} of tours without a shortage.{' '}
              {hardware.trunk.sentence}
            </p>
          )}
          {zeroSpares(hardware.lines).map((each) => (
            <p className="note" key={each.none}>
              <b>{each.none}</b> {each.why}
            </p>
          ))}
          {notToBeUsed(hardware.lines).map(({ lot, line, reason }) => (
            <p className="note" key={lot}>
              <b>■ {lot} is not to be used</b> ({line.item}, {line.model}): {reason}
            </p>
          ))}
          <p>
            <Link to={`${base}/counts`}>Counts at return</Link>
          </p>
          <p className="caution">{hardware.caution}</p>
        </>
      }
    >
      {narrow ? <Lines lines={hardware.lines} /> : <Table lines={hardware.lines} />}
      <ByCart planId={planId} hardware={hardware} />
      <Spares hardware={hardware} />
      <Chains hardware={hardware} />
    </Part>
  );
}

function Table({ lines }: { lines: readonly HardwareLine[] }) {
  return (
    <div {...scrolls}>
      <table className="tight">
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
            <th>Taken from</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.key}>
              <td>
                <NameOf line={line} />
                <Why of={line.working} />
              </td>
              <td className="num">{line.fitted}</td>
              <td className="num">
                {line.withBox}
                {line.staysInBox > 0 && (
                  <>
                    <br />
                    <small>{line.staysInBox} stay there</small>
                  </>
                )}
              </td>
              <td className="num">{line.withCart}</td>
              <td className="num">{line.loose}</td>
              <td className="num">{line.spares}</td>
              <td className="num">{line.levelReached === null ? 'not known' : percent(line.levelReached)}</td>
              <td className="num">
                <OnHand line={line} />
              </td>
              <td>{takenWords(line)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

const OnHand = ({ line }: { line: HardwareLine }) => (
  <>
    {line.onHand}
    {line.keptAtHome > 0 && (
      <>
        <br />
        <small>{line.keptAtHome} stay at home</small>
      </>
    )}
    {line.missing > 0 && (
      <>
        <br />
        <b>■ {line.missing} missing</b>
      </>
    )}
  </>
);

/** The same for a phone: a line of words each. */
function Lines({ lines }: { lines: readonly HardwareLine[] }) {
  return (
    <ul className="plain">
      {lines.map((line) => (
        <li key={line.key} className="record">
          <p>
            <b>
              <NameOf line={line} />
            </b>
          </p>
          <p>
            {[
              `${line.fitted} fitted`,
              line.withBox > 0 && `${line.withBox} with their boxes${line.staysInBox > 0 ? `, ${line.staysInBox} stay there` : ''}`,
              line.withCart > 0 && `${line.withCart} with their carts`,
              line.loose > 0 && `${line.loose} loose`,
              `${line.spares} spare`,
            ]
              .filter(Boolean)
              .join(' · ')}
          </p>
          <p>
            {line.missing > 0 && <b>■ {line.missing} missing. </b>}
            {onHandWords(line)}
            {line.levelReached === null ? '' : ` · enough for ${percent(line.levelReached)}`}
          </p>
          {takenWords(line) && <p className="quiet">{takenWords(line)}</p>}
          <Why of={line.working} />
        </li>
      ))}
    </ul>
  );
}

/** Those that stay at home with their boxes and carts are on hand, and not to be had. */
const onHandWords = ({ onHand, keptAtHome }: HardwareLine): string =>
  keptAtHome === 0 ? `${onHand} on hand` : `${onHand} on hand, ${keptAtHome} of them stay at home with their boxes and carts`;

const NameOf = ({ line }: { line: HardwareLine }) => (
  <>
    {line.item}, {line.model}
    {line.size ? `, ${line.size}` : ''}
  </>
);

/** What rides with each cart load, to be counted before the lid goes on. */
function ByCart({ planId, hardware }: { planId: string; hardware: HardwareResult }) {
  const loads = useCarts(planId).data?.loads ?? [];
  const carried = hardware.lines.filter((line) => line.carriers.length > 0);
  if (carried.length === 0) return null;
  return (
    <details>
      <summary>With each cart</summary>
      <div {...scrolls}>
        <table className="tight">
          <thead>
            <tr>
              <th>Cart</th>
              <th>Load</th>
              {carried.map((line) => (
                <th key={line.key} className="num">
                  {line.item}
                  <br />
                  {line.size ?? line.model}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {loads.map((load) => (
              <tr key={load.id}>
                <td className="mono">{load.cart ?? 'none'}</td>
                <td>{load.id}</td>
                {carried.map((line) => (
                  <td key={line.key} className="num">
                    {line.carriers.find((each) => each.load === load.id)?.count ?? 0}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

/** Why so many: the level wanted and reached, one stock against several, belief and count. */
function Spares({ hardware }: { hardware: HardwareResult }) {
  const known = hardware.lines.filter((line) => line.levelReached !== null);
  if (known.length === 0) return null;
  return (
    <details>
      <summary>Why so many spares</summary>
      <p>
        {hardware.trunk.sentence} One stock, by hang, by leg: spares for the level wanted where one stock serves all, where each hang or
        each leg has its own. Losses are in 1,000 uses.
      </p>
      <div {...scrolls}>
        <table className="tight">
          <thead>
            <tr>
              <th>Piece</th>
              <th className="num">Spares</th>
              <th className="num">Wanted</th>
              <th className="num">Enough for</th>
              <th className="num">One stock</th>
              <th className="num">By hang</th>
              <th className="num">By leg</th>
            </tr>
          </thead>
          <tbody>
            {known.map((line) => (
              <tr key={line.key}>
                <td>
                  <NameOf line={line} />
                  <br />
                  <small className="quiet">{learnedWords(line)}</small>
                </td>
                <td className="num">{line.spares}</td>
                <td className="num">{line.levelWanted === null ? 'the trunk’s' : percent(line.levelWanted)}</td>
                <td className="num">{percent(line.levelReached!)}</td>
                <td className="num">{line.pooling?.together}</td>
                <td className="num">{line.pooling && saved(line.pooling.byHang, line.pooling.together)}</td>
                <td className="num">{line.pooling && saved(line.pooling.byLeg, line.pooling.together)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

const saved = (apart: number, together: number): string => (apart > together ? `${apart}, ${apart - together} more` : String(apart));

function Chains({ hardware }: { hardware: HardwareResult }) {
  const { units } = useSettings();
  const metres = (value: number) => formatLength(value * 1000, units);
  if (hardware.chains.length === 0) return null;
  return (
    <details>
      <summary>Chain of each hoist</summary>
      <p>The hook comes down to the floor below its point. At trim the chain between point and hook hangs free; the rest is in the bag.</p>
      <div {...scrolls}>
        <table className="tight">
          <thead>
            <tr>
              <th>Pick</th>
              <th>Hoist</th>
              <th className="num">Chain on file</th>
              <th className="num">Needed</th>
              <th className="num">In the bag at trim</th>
              <th>Judged</th>
            </tr>
          </thead>
          <tbody>
            {hardware.chains.map((each) => (
              <tr key={`${each.hang} ${each.hole}`}>
                <td>
                  {each.hangName}, hole {each.hole}
                </td>
                <td className="mono">{each.serial ?? each.hoist}</td>
                <td className="num">{metres(each.onFileM)}</td>
                <td className="num">{metres(each.neededM)}</td>
                <td className="num">{each.inBagAtTrimM === null ? 'not known' : metres(each.inBagAtTrimM)}</td>
                <td>
                  {each.enough ? '○ long enough on file' : '■ too short'}
                  {each.pointHeightMm === null ? ', for the trim height only' : ''}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
