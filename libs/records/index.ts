/** Records of examinations: what one must hold by the rules on file, how long it is kept, how it is read line by line. */
export { type AskedField, askedFields, mayExamine, missingFields, paragraphOf, rulesOfRecord } from './asked-fields.js';
export { type DecidedRow, type ListedItem, decideListed } from './decide-listed.js';
export { type Correction, type Judging, type NamedOnFile, examinationFaults, recordFaults } from './examination-faults.js';
export { type Kept, keepUntil } from './keep-until.js';
export { lolerSchedule1 } from './loler-schedule-1.js';
export { type FollowedDefect, type ReportLine, followDefects, reportLines } from './report-lines.js';
export type { InspectedItem, InspectedRecord } from './inspected-item.js';
export { itemLife } from './item-life.js';
export { extractRows } from './extract-rows.js';
