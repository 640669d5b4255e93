import type { Examination } from '../shapes/index.js';
import { type CellFormName, cellForms } from './cell-forms.js';
import { type ModelColumn, modelCell } from './model-columns.js';

/** A row of an examiner's list: one examination of one item, or of one batch. */
export interface ListedExamination {
  readonly serial: string;
  /** Of a batch: how many pieces were examined; undefined: not said. */
  readonly pieces?: number;
  readonly examination: Examination;
}

type Row = readonly [heading: string, path: string, form?: CellFormName];

const rows: readonly Row[] = [
  ['serial', 'serial'],
  ['pieces', 'pieces', 'number'],
  ['examined on', 'examination.on'],
  ['check', 'examination.check'],
  ['kind of examination', 'examination.satisfies', 'words'],
  ['outcome', 'examination.outcome', 'outcome'],
  ['examiner', 'examination.examiner'],
  ['company', 'examination.particulars.employedBy'],
  ['report', 'examination.report'],
  ['next no later than', 'examination.nextLatestOn'],
  ['defects', 'examination.particulars.defects', 'defects'],
  ['defect to be put right by', 'examination.defectBy'],
  ['answers incidents of', 'examination.answers', 'words'],
  ['under a scheme', 'examination.underScheme', 'yes or no'],
  ['made for', 'examination.particulars.employer'],
  ['premises', 'examination.particulars.premises'],
  ['identified as', 'examination.particulars.identity'],
  ['made in', 'examination.particulars.manufactured'],
  ['last examination before', 'examination.particulars.previousOn'],
  ['working load limit', 'examination.particulars.workingLoadLimit'],
  ['first after installation', 'examination.particulars.firstAfterInstallation', 'yes or no'],
  ['statement on installation', 'examination.particulars.installedStatement'],
  ['made', 'examination.particulars.basis'],
  ['statement on operation', 'examination.particulars.statement'],
  ['tests made', 'examination.particulars.tests'],
  ['examiner address', 'examination.particulars.examinerAddress'],
  ['qualifications', 'examination.particulars.qualifications'],
  ['examiner acts as', 'examination.particulars.capacity'],
  ['authenticated by', 'examination.particulars.authenticatedBy'],
  ['day of the report', 'examination.particulars.reportOn'],
  ['remarks', 'examination.particulars.remarks'],
  ['dangerous parts', 'examination.particulars.dangerousParts'],
  ['repairs needed', 'examination.particulars.repairsNeeded'],
  ['repairs before danger', 'examination.particulars.repairsBeforeDanger'],
];

/** The columns of an examiner's list; the file of a report is kept beside its record, not in a list. */
export const examinationColumns: readonly ModelColumn[] = rows.map(([heading, path, form = 'text']) => ({
  heading,
  path: path.split('.'),
  form: cellForms[form],
}));

/** The cells of a row, in the order of the columns. */
export const examinationCells = (listed: ListedExamination): readonly string[] =>
  examinationColumns.map((column) => modelCell(listed, column));

/** Made-up rows for the example file: one of a thing that passed, one of a batch, one that failed. */
export const examinationExamples: readonly ListedExamination[] = [
  {
    serial: 'EX-H1',
    examination: {
      ...{
        on: '2027-02-01',
        outcome: 'pass',
        satisfies: ['P12M'],
        examiner: 'B. Ropemaker',
        report: 'RM-27-014',
        nextLatestOn: '2028-02-01',
      },
      particulars: {
        ...{ employedBy: 'Ropemaker Inspection (invented), 2 Ferry Lane', employer: 'Ferry Lane Hire (invented), 1 Ferry Lane' },
        ...{ premises: 'the depot, 1 Ferry Lane', manufactured: '2021', previousOn: '2026-02-03', workingLoadLimit: '2500 kg' },
        ...{ firstAfterInstallation: false, basis: 'within 12 months', statement: 'fit for use as marked', defects: [] },
        ...{ tests: 'none', examinerAddress: '2 Ferry Lane', qualifications: 'engineer surveyor', reportOn: '2027-02-02' },
        ...{ authenticatedBy: 'B. Ropemaker, 2 Ferry Lane', remarks: 'chain oiled' },
      },
    },
  },
  {
    serial: 'EX-SH1',
    pieces: 24,
    examination: {
      on: '2027-02-01',
      outcome: 'pass',
      satisfies: ['P6M'],
      examiner: 'B. Ropemaker',
      report: 'RM-27-015',
      particulars: { defects: [] },
    },
  },
  {
    serial: 'EX-H2',
    examination: {
      ...{ on: '2027-02-01', outcome: 'fail', examiner: 'B. Ropemaker', report: 'RM-27-016' },
      particulars: { defects: [{ part: 'load chain', what: 'worn to 4 % of the link', repair: 'renew the chain' }] },
    },
  },
];
