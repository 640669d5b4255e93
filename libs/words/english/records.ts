import type { RecordField } from '#trade';
import type { Words } from '../table/index.js';

interface FieldWords {
  readonly label: string;
  readonly wanted: string;
}

const fields: Readonly<Record<RecordField, FieldWords>> = {
  employer: { label: 'Made for', wanted: 'name and address of the employer for whom it was made' },
  premises: { label: 'Premises', wanted: 'the address at which it was made' },
  identity: { label: 'Identified as', wanted: 'words that tell the thing apart' },
  manufactured: { label: 'Made in (year or day)', wanted: 'when it was made, a year or a day' },
  previousOn: { label: 'Last examination before', wanted: 'the day of the examination before, or none' },
  workingLoadLimit: { label: 'Working load limit, with the configuration', wanted: 'the working load limit, with the configuration' },
  firstAfterInstallation: {
    label: 'First after installation or assembly at a new site',
    wanted: 'yes or no: whether it is the first after installation or assembly at a new site',
  },
  installedStatement: { label: 'The examiner’s statement on the installation', wanted: 'the examiner’s statement on the installation' },
  basis: { label: 'Made', wanted: 'within 6 months, within 12 months, under a scheme, or after exceptional circumstances' },
  statement: { label: 'The examiner’s statement on operation', wanted: 'the examiner’s statement on operation' },
  defects: { label: 'Parts with a defect', wanted: 'the parts with a defect, or that the report names none' },
  nextLatestOn: { label: 'Next at the latest', wanted: 'the latest day of the next examination' },
  tests: { label: 'Tests made', wanted: 'the tests made, or none' },
  examiner: { label: 'Examiner', wanted: 'the name of who examined it' },
  examinerAddress: { label: 'Examiner’s address', wanted: 'the examiner’s address' },
  qualifications: { label: 'Examiner’s qualifications', wanted: 'the examiner’s qualifications' },
  capacity: { label: 'Examiner acts as', wanted: 'as what the examiner acts' },
  employedBy: { label: 'Examiner’s employer', wanted: 'self-employed, or name and address of the examiner’s employer' },
  authenticatedBy: { label: 'Signed or authenticated by', wanted: 'name and address of who signed or authenticated it' },
  remarks: { label: 'Remarks', wanted: 'remarks, or none' },
  report: { label: 'Report number', wanted: 'the number of the report' },
  reportOn: { label: 'Day of the report', wanted: 'the day of the report' },
  reportFile: { label: 'The report itself', wanted: 'the report itself, as a file' },
};

export const recordField: Words['recordField'] = (field) => fields[field].label;

export const recordWanted: Words['recordWanted'] = (field, { source, paragraph, wasRead }) =>
  `${fields[field].wanted}: ${source}${paragraph === null ? '' : `, paragraph ${paragraph}`} asks for it${wasRead ? '' : ' (from memory: compare it with the text)'}`;

export const keptUntil: Words['keptUntil'] = {
  day: ({ on }) => `until ${on}`,
  'next-report': ({ atLeast }) => (atLeast === null ? 'until the next report' : `until the next report, and no less than until ${atLeast}`),
  'in-use': ({ atLeast }) => `as long as it is used${atLeast === null ? '' : `, and no less than until ${atLeast}`}`,
  'not-said': () => 'no rule on file says how long',
};

export const ruleBasis: Words['ruleBasis'] = {
  time: 'by time',
  'before use': 'before each use',
  'after installation': 'after installation, and after assembly at a new site',
  'after an event': 'after an exceptional event',
  lifts: 'by lifts',
  hours: 'by hours',
};

export const life: Words['life'] = {
  bought: () => 'bought',
  'first-used': () => 'first used',
  declared: () => 'declared conform by its maker',
  examined: ({ passed, report, corrected }) =>
    `examined, ${passed ? 'passed' : 'failed'}${report === null ? '' : `, report ${report}`}${corrected ? ' (a corrected record)' : ''}`,
  happened: ({ what }) => `incident: ${what}`,
  out: ({ sentence }) => sentence,
  flown: ({ tour, until }) => `on tour with ${tour} until ${until}`,
};
