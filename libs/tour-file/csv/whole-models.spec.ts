import type { z } from 'zod';
import { wholeValue } from '../../../tests/support/whole-value.js';
import { catalogue } from '../shapes/index.js';
import { modelCell, modelColumns, modelKinds } from './model-columns.js';
import { readModelsCsv } from './read-models-csv.js';

const turns = Array.from({ length: 24 }, (_, turn) => turn);

// The models are made from the schemas: a field that is new there fails here until a column holds it.
describe.each(modelKinds)('a row of %s that is saved unchanged', (kind) => {
  it.each(turns)('holds every field of the model (%i)', (turn) => {
    const [first] = catalogue.shape[kind].parse(wholeValue(catalogue.shape[kind] as z.ZodType, turn)) as {
      model: string;
      unaccepted?: true;
    }[];
    if (!first) throw new Error('no model was made');
    const { unaccepted: _held, ...whole } = first;
    const columns = modelColumns(kind);
    const rows = [columns.map((each) => each.heading), columns.map((each) => modelCell(whole, each))];
    expect(readModelsCsv(kind, rows)).toEqual({ models: [whole], faults: [], rowOf: new Map([[whole.model, 2]]) });
  });
});
