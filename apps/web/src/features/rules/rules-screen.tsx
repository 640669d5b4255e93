import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import type { ExaminationRule, LoadRule, RiggingSystem } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { RegimeForm, RegimePart } from '../register/regime-part.js';
import { modelsQuery } from '../register/operations.js';
import { SystemForm, SystemPart } from '../register/system-part.js';
import { ExaminationRules } from './examination-rules.js';
import { regimeStarts } from './regime-starts.js';

/** What figures are held against: load regimes, examination rules, rigging systems; each is made here, with its source. */
export function RulesScreen({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['models'], queryFn: () => request(modelsQuery) });
  const mayWrite = me.role !== 'warehouse';
  return (
    <Page
      title="Rules and rigging systems"
      lede="What loads and dates are held against. Each figure has its source, and says whether it was read there."
    >
      <Loaded query={query}>
        {(data) => {
          const { loadRules, examinationRules } = data.rules as { loadRules: LoadRule[]; examinationRules: ExaminationRule[] };
          const systems = data.riggingSystems as RiggingSystem[];
          return (
            <>
              <Part number={1} title="Load rules" id="load-rules">
                {loadRules.length === 0 && <p>No load rule is on file. A show needs one.</p>}
                {loadRules.map((rule) => (
                  <RegimePart key={rule.id} rule={rule} me={me} />
                ))}
                {mayWrite && <NewLoadRule />}
              </Part>
              <Part number={2} title="Examination rules" id="examination-rules">
                <ExaminationRules rules={examinationRules} me={me} />
              </Part>
              <Part number={3} title="Rigging systems" id="systems">
                {systems.length === 0 && <p>No rigging system is on file. A model of a box or a grid belongs to one.</p>}
                {systems.map((system) => (
                  <SystemPart key={system.id} system={system} me={me} />
                ))}
                {mayWrite && <NewSystem />}
              </Part>
            </>
          );
        }}
      </Loaded>
      <p>
        <Link to="/begin">What a first plan needs, in order</Link>
      </p>
    </Page>
  );
}

function NewLoadRule() {
  const [start, setStart] = useState(0);
  const [made, setMade] = useState(0);
  const from = regimeStarts[start] ?? regimeStarts[0];
  return (
    <details>
      <summary>Make a load rule</summary>
      <label>
        Begin with
        <select value={start} onChange={(event) => setStart(Number(event.target.value))}>
          {regimeStarts.map(({ title }, index) => (
            <option key={title} value={index}>
              {title}
            </option>
          ))}
        </select>
      </label>
      <p className="quiet">
        The factor on point loads and the share of a rated load are your company’s, the venue’s or the law’s: no number is filled in for
        you. Say where each comes from. A section that is left empty is said to be missing wherever it would be compared.
      </p>
      {from && <RegimeForm key={`${start} ${made}`} from={from.text} was={() => null} onSaved={() => setMade(made + 1)} />}
      {made > 0 && <p role="status">The load rule is on file.</p>}
    </details>
  );
}

function NewSystem() {
  const [made, setMade] = useState(0);
  return (
    <details>
      <summary>Make a rigging system</summary>
      <p className="quiet">
        From the maker’s manual, with its revision. Until the safety officer has approved it, every print of it says “example, not for use”.
      </p>
      <SystemForm key={made} system={null} was={() => null} onSaved={() => setMade(made + 1)} />
      {made > 0 && <p role="status">The rigging system is on file and waits for the safety officer’s approval.</p>}
    </details>
  );
}
