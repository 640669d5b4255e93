import type { ExaminationRule } from '#tour-file';
import { placeName } from '#trade';
import { english } from '#words';
import { whyNoPlace } from '../../ui/places.js';

const statusWords: Record<ExaminationRule['status'], string> = {
  found: 'read there',
  'house rule': 'a rule of your company',
  'from memory': 'not read: from memory, no authority',
};

const noPlace = ({ jurisdiction }: ExaminationRule): string => {
  const why = whyNoPlace(jurisdiction);
  return why === undefined ? '' : `■ ${why}: no tour is judged by this rule. Make it anew there and take this one out. `;
};

/** When it is asked for: "every 6 months", "before each use", "after 500 hours". */
function whenAsked({ intervals, basis, every }: ExaminationRule): string {
  if (intervals.length > 0) return `every ${intervals.map((each) => english.interval(each)).join(' and ')}`;
  return every === undefined ? english.ruleBasis[basis ?? 'time'] : `after every ${every} ${basis}`;
}

/** A rule in one line, as it stands on file. */
export const RuleLine = ({ rule }: { rule: ExaminationRule }) => (
  <>
    {placeName(rule.jurisdiction)}: {rule.kinds.join(', ')}: {rule.check ? `${english.check[rule.check]} ` : ''}
    {whenAsked(rule)}
    {rule.who ? `; by: ${rule.who}` : ''}. {noPlace(rule)}
    <span className="quiet">
      {rule.source} ({statusWords[rule.status]}){recorded(rule)}
      {kept(rule)}
    </span>
  </>
);

function recorded({ record }: ExaminationRule): string {
  if (!record) return '; asks for no record beyond examiner and report';
  const asked = [record.list ?? '', record.fields ? `${record.fields.length} fields` : ''].filter(Boolean).join(' and ');
  return `; record: ${asked}, ${record.source} (${statusWords[record.status]})`;
}

function kept({ retention }: ExaminationRule): string {
  if (!retention) return '';
  const { atLeast, untilNextReport, whileInUse, source, status } = retention;
  const until = [
    atLeast ? `for ${english.interval(atLeast)}` : '',
    untilNextReport ? 'until the next report' : '',
    whileInUse ? 'while it is in use' : '',
  ];
  return `; records kept ${until.filter(Boolean).join(' and ')}: ${source} (${statusWords[status]})`;
}
