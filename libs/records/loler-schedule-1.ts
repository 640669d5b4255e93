import type { RecordField } from '#trade';

/** A content of a report with the paragraph of the list that asks for it. */
export interface ListedField {
  readonly field: RecordField;
  readonly paragraph: string;
  /** The paragraph was read in the text of the law; otherwise it is from memory and has to be compared. */
  readonly wasRead: boolean;
}

const read = (paragraph: string, field: RecordField): ListedField => ({ field, paragraph, wasRead: true });
const fromMemory = (paragraph: string, field: RecordField): ListedField => ({ field, paragraph, wasRead: false });

/**
 * Contents of a report of a thorough examination: Lifting Operations and Lifting Equipment Regulations 1998, Schedule 1. Paragraphs 1 to 8(c)(ii)
 * were read in the text (that of the identical Northern Ireland regulation); 8(d) to 11 are from memory.
 */
export const lolerSchedule1: readonly ListedField[] = [
  read('1', 'employer'),
  read('2', 'premises'),
  read('3', 'identity'),
  read('4', 'previousOn'),
  read('5', 'workingLoadLimit'),
  read('6(a)', 'firstAfterInstallation'),
  read('6(b)', 'installedStatement'),
  read('7(a)', 'basis'),
  read('7(b)', 'statement'),
  read('8(a) to (c)', 'defects'),
  fromMemory('8(d)', 'nextLatestOn'),
  fromMemory('8(e)', 'tests'),
  fromMemory('9', 'examiner'),
  fromMemory('9', 'examinerAddress'),
  fromMemory('9', 'qualifications'),
  fromMemory('9', 'employedBy'),
  fromMemory('10', 'authenticatedBy'),
  fromMemory('11', 'reportOn'),
];
