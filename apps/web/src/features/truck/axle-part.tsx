import { formatMass, formatShort, partLoadSentence, sideWords, stopsOf } from '#drawings';
import type { AxleStop, BridgeCheck, TruckResultOne } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { countOf } from '../../platform/written.js';
import { Note } from '../../ui/notes.js';
import { Part } from '../../ui/page.js';
import { Why } from '../../ui/why.js';
import { scrolls } from '../../ui/scrolls.js';

const marks = { within: '', over: '■ over', 'too light': '■ too light', 'no limit on file': '' } as const;

/** Axle loads full and after each stop, each axle opened into its terms. */
export function AxlePart({ truck, caution }: { truck: TruckResultOne; caution: string }) {
  const { units } = useSettings();
  const stops = stopsOf(truck);
  const partLoad = partLoadSentence(truck);
  const whole = stops[0];
  return (
    <Part number={5} title="Axles, full and as it is unloaded" margin={<p className="caution">{caution}</p>}>
      {whole && whole.loads.length > 0 ? (
        <div {...scrolls}>
          <table className="tight stops">
            <thead>
              <tr>
                <th />
                {whole.loads.map((each) => (
                  <th key={each.axle} className="num">
                    {each.axle}
                  </th>
                ))}
                <th className="num">Load</th>
                <th className="num">Off the middle</th>
              </tr>
            </thead>
            <tbody>
              <tr>
                <th scope="row">Limit</th>
                {whole.loads.map((each) => (
                  <td key={each.axle} className="num">
                    {each.limitKg === null ? 'none on file' : formatMass(each.limitKg, units)}
                  </td>
                ))}
                <td className="num">{truck.payloadKg > 0 ? formatMass(truck.payloadKg, units) : 'none on file'}</td>
                <td className="num">{whole.sideLimitMm === null ? 'none on file' : formatShort(whole.sideLimitMm, units)}</td>
              </tr>
              {stops.map((stop, index) => (
                <StopRow key={index} stop={stop} />
              ))}
            </tbody>
          </table>
        </div>
      ) : (
        <Note weight="look">No axle figures are on file for this truck: its axle loads are not known.</Note>
      )}
      {partLoad && <Note weight="look">{partLoad}</Note>}
      {truck.bridge && <Bridge of={truck.bridge} />}
      {truck.axles
        .filter((each) => each.working)
        .map((each) => (
          <div key={each.axle}>
            <h3>
              {each.axle}, full: {formatMass(each.loadKg, units)}
            </h3>
            <Why of={each.working!} />
          </div>
        ))}
      {whole?.loads.length === 0 && <Why of={truck.working} />}
    </Part>
  );
}

function StopRow({ stop }: { stop: AxleStop }) {
  const { units } = useSettings();
  return (
    <tr>
      <th scope="row">{stop.off === null ? 'Full' : `${stop.off} off`}</th>
      {stop.loads.map((each) => (
        <td key={each.axle} className="num">
          {formatMass(each.loadKg, units)} <b>{marks[each.verdict]}</b>
        </td>
      ))}
      <td className="num">{formatMass(stop.massKg, units)}</td>
      <td className="num">{sideWords(stop.sideOffsetMm, units)}</td>
    </tr>
  );
}

function Bridge({ of }: { of: BridgeCheck }) {
  const pounds = (lb: number) => countOf(Math.round(lb));
  return (
    <>
      <Note weight={of.status === 'within' ? 'agrees' : of.status === 'over' ? 'stop' : 'look'}>{of.sentence}</Note>
      <details>
        <summary>Every run of axles</summary>
        <div className="working">
          <p>{of.rule}</p>
          <p className="quiet">Source: {of.source}</p>
          <table className="tight">
            <thead>
              <tr>
                <th>Axles</th>
                <th className="num">Span, ft</th>
                <th className="num">Load, lb</th>
                <th className="num">Limit, lb</th>
              </tr>
            </thead>
            <tbody>
              {of.groups.map((each) => (
                <tr key={`${each.first}-${each.last}`}>
                  <td>{each.first === each.last ? each.first : `${each.first} to ${each.last}`}</td>
                  <td className="num">{each.spanFt}</td>
                  <td className="num">
                    {pounds(each.loadLb)} {each.isOver && <b>■ over</b>}
                  </td>
                  <td className="num">{pounds(each.limitLb)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </>
  );
}
