import { graphql } from '#contracts';
import type { AnswerOf } from '../../platform/request.js';

export const csvImportQuery = graphql(
  `query CsvImport($id: ID!) { csvImport(id: $id) { id of dryRun askedBy askedAt state step rowsTotal rowsChecked rowsWritten rowsDated seconds code outcome { rows added changed unchanged failed waiting faulty firstAdded firstFailed firstChanged { id what } firstWaiting faults { column wanted count rows first { row value } } } } }`,
);

export const latestCsvImportsQuery = graphql(
  `query LatestCsvImports { latestCsvImports { id of dryRun askedBy askedAt state rowsTotal seconds } }`,
);

export const cancelCsvImportMutation = graphql(`mutation CancelCsvImport($id: ID!) { cancelCsvImport(id: $id) { id state } }`);

export type CsvImport = AnswerOf<typeof csvImportQuery>['csvImport'];
