import { useState } from 'react';
import { Link } from 'react-router';
import {
  angle,
  drawHang,
  drawRear,
  drawStage,
  formatForce,
  formatMass,
  jointContent,
  nearestSentence,
  pointTable,
  slackSentence,
  stageContent,
  windSentence,
} from '#drawings';
import { type HangResult, type PicksHead, type ToldFinding, concernsHang, stoppedJoints } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { FindingNote } from '../../ui/finding-note.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Part } from '../../ui/page.js';
import { LiftSteps } from '../hang/lift-steps.js';
import { useFindings, useHang, usePicks } from '../plan/use-plan-parts.js';
import { scrolls } from '../../ui/scrolls.js';

export function HangParts({ planId, hangs, base }: { planId: string; hangs: readonly string[]; base: string }) {
  return (
    <>
      {hangs.map((hang, index) => (
        <HangOf key={hang} base={base} planId={planId} hang={hang} number={`1${'abcdefghijklmnopqrstuvwxyz'[index] ?? ''}`} />
      ))}
      <StagePlan planId={planId} hangs={hangs} base={base} />
    </>
  );
}

function StagePlan({ planId, hangs, base }: { planId: string; hangs: readonly string[]; base: string }) {
  const { units } = useSettings();
  const picks = usePicks(planId, hangs);
  const stage = picks.data && drawStage(picks.data, units);
  if (!stage || !picks.data) return null;
  return (
    <section aria-label="Points on the stage plan">
      <div />
      <details>
        <summary>Points on the stage plan</summary>
        <Drawing of={stage} wide />
        <div {...scrolls}>
          <Drawing of={pointTable(picks.data, units)} />
        </div>
        <p>
          <a href={`/api/points/${planId}/points.csv`}>Points as CSV</a> ·{' '}
          <a href={`/api/points/${planId}/points.mvr`}>Points as a scene (MVR)</a> ·{' '}
          <Link to={`${base.replace('/tours/', '/print/').replace('/shows/', '/')}/points`} target="_blank">
            Print the point loads
          </Link>{' '}
          ·{' '}
          <Link to={`${base.replace('/tours/', '/print/').replace('/shows/', '/')}/mark-out`} target="_blank">
            Print the mark-out
          </Link>
        </p>
      </details>
      <aside />
    </section>
  );
}

function HangOf({ planId, hang, number, base }: { planId: string; hang: string; number: string; base: string }) {
  const query = useHang(planId, hang);
  const findings = useFindings(planId);
  return (
    <Loaded query={query}>
      {({ hang: found, picks }) => (
        <HangPart planId={planId} picks={picks} all={findings.data ?? []} hang={found} number={number} base={base} />
      )}
    </Loaded>
  );
}

interface HangPartProps {
  readonly planId: string;
  readonly picks: PicksHead;
  readonly all: readonly ToldFinding[];
  readonly hang: HangResult;
  readonly number: string;
  readonly base: string;
}

function HangPart({ planId, picks, all, hang, number, base }: HangPartProps) {
  const { units } = useSettings();
  const mirrored = usePicks(planId, hang.mirrorOf ? [hang.mirrorOf] : []).data?.hangs[0];
  const findings = all.filter((each) => each.section === 'picks' && concernsHang(each, hang));
  const wrong = stoppedJoints(findings, hang.hang);
  return (
    <Part
      number={number}
      id={`hang-${hang.hang}`}
      title={`${hang.name}, ${hang.boxes.length} boxes${hang.mirrorOf ? `, mirror of ${mirrored?.name ?? hang.mirrorOf}` : ''}`}
      margin={
        <>
          <p className="note">
            <b>{formatMass(hang.massKg, units)}</b> {hang.picks.length === 2 ? 'hangs on two picks' : 'hangs on one pick'} at{' '}
            {angle(hang.tiltDownDeg)}; the last box aims {angle(hang.bottomAimDownDeg)}. {slackSentence(hang)} {windSentence(hang)}
          </p>
          {findings.map((each, index) => (
            <FindingNote key={index} of={each} />
          ))}
          <p className="caution">{picks.caution}</p>
        </>
      }
    >
      <div className="pair">
        <Drawing of={drawHang(hang, units, wrong)} />
        <div>
          <div {...scrolls}>
            <table className="tight">
              <thead>
                <tr>
                  <th className="num">Pos.</th>
                  <th>Serial</th>
                  <th>Model</th>
                  <th className="num">Splay</th>
                  <th>Cart</th>
                  <th className="num">Below</th>
                </tr>
              </thead>
              <tbody>
                {hang.boxes.map((box) => (
                  <tr key={box.position}>
                    <td className="num">{box.position}</td>
                    <td className="mono">{box.serial ?? 'missing'}</td>
                    <td>{box.model}</td>
                    <td className="num">{box.splayDeg}°</td>
                    <td className="mono">{box.cart ?? ''}</td>
                    <td className="num">{formatMass(box.hangsBelowKg, units)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          {hang.picks.map((pick) => (
            <div key={pick.hole}>
              <h3>
                Pick at hole {pick.hole}
                {pick.place === 'only' ? '' : ` (${pick.place})`}
              </h3>
              <p>
                <b>{formatMass(pick.hookLoadKg, units)}</b> at the hook of{' '}
                {pick.hoistSerial ? <span className="mono">{pick.hoistSerial}</span> : `a ${pick.hoist} that is not found`}. The point
                carries {formatForce(pick.pointLoadN, units)}, times {picks.loadRule.dynamicFactor}:{' '}
                {formatForce(pick.pointLoadDynamicN, units)}.
              </p>
              <ul>
                {pick.comparisons
                  .filter((each) => each.verdict !== 'within')
                  .map((each) => (
                    <li key={each.what}>{each.sentence}</li>
                  ))}
                <li>{nearestSentence(pick.comparisons)}</li>
              </ul>
              <Link to={`${base}/hangs/${encodeURIComponent(hang.hang)}/picks/${encodeURIComponent(pick.hole)}`}>
                The sum and every comparison on one page
              </Link>
            </div>
          ))}
          {hang.unshared && <Note weight="look">{hang.unshared.sentence}</Note>}
          <Joints hang={hang} />
          {hang.stages.length > 0 && <Lift hang={hang} />}
          {hang.stages.length > 0 && (
            <details>
              <summary>Stage by stage on the way up</summary>
              <div {...scrolls}>
                {stageContent(hang, units).map((each, index) => (
                  <Drawing key={index} of={each} />
                ))}
              </div>
            </details>
          )}
          <details>
            <summary>Seen from behind</summary>
            <Drawing of={drawRear(hang, units)} />
          </details>
          <p>
            <Link className="btn plain" to={`${base}/hangs/${encodeURIComponent(hang.hang)}/running`}>
              Lift sequence
            </Link>
          </p>
        </div>
      </div>
    </Part>
  );
}

function Joints({ hang }: { hang: HangResult }) {
  const { units } = useSettings();
  return (
    <details>
      <summary>Forces in the joints</summary>
      <div {...scrolls}>
        {jointContent(hang, units).map((each, index) => (
          <Drawing key={index} of={each} />
        ))}
      </div>
    </details>
  );
}

/** Computed when it is opened. */
function Lift({ hang }: { hang: HangResult }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>The lift in pictures, moment by moment</summary>
      {isOpen && <LiftSteps hang={hang} />}
    </details>
  );
}
