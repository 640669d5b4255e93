import { csvColumns, itemKinds, modelColumns, modelKinds } from '../index.js';
import { allColumns, correctedRows, headingRowOf, kindOfSheet, knownColumns, matchColumns, matchedSheet, separatorOf } from './index.js';

const spelt = (kind: string): string[] => knownColumns(kind).map((each) => each.heading);

describe('what stands between cells', () => {
  it.each([
    ['serial,model,"boxes, top first"\r\nK-1,Cart,', ','],
    ['serial;model;boxes, top first\nK-1;Cart;', ';'],
    ['\uFEFF\n\nserial\tmodel; kind\tdepot\n', '\t'],
    ['date|venue\n2027-03-04|a;b;c', '|'],
    ['"a;b;c;d",b', ','],
    ['serial', ','],
  ])('%j is separated by %j', (text, separator) => expect(separatorOf(text)).toBe(separator));
});

describe('columns of a sheet', () => {
  it('are ours by their heading, or by another word for it, each once', () => {
    expect(matchColumns(['Serial No.', 'MODEL', 'Home', 'note', 'Warehouse', ''], knownColumns('items/box'))).toEqual([
      'serial',
      'model',
      'depot',
      null,
      null,
      null,
    ]);
  });

  it('are found under a title and a date', () => {
    const rows = [['Kit list'], ['2027-03-01'], [], ['Serial', 'Type', 'Warehouse'], ['P-1', 'Plover', 'Ferry Lane']];
    expect(headingRowOf(rows, allColumns)).toBe(3);
    expect(headingRowOf([[], ['something', 'else'], ['a', 'b']], allColumns)).toBe(1);
    expect(headingRowOf([], allColumns)).toBe(0);
  });

  it('say what kind of rows these are, or leave it open', () => {
    for (const kind of itemKinds) expect(kindOfSheet(`our ${kind}s.csv`, spelt(`items/${kind}`))).toBe(`items/${kind}`);
    for (const kind of modelKinds) expect(kindOfSheet(`models-${kind}.csv`, spelt(`models/${kind}`))).toBe(`models/${kind}`);
    expect(kindOfSheet('rows.csv', spelt('models/grids'))).toBe('models/grids');
    expect(kindOfSheet('rows.csv', spelt('items/cart'))).toBe('items/cart');
    expect(kindOfSheet('rows.csv', ['serial', 'model', 'depot'])).toBeUndefined();
    expect(kindOfSheet('Boxes', ['serial', 'model', 'depot'])).toBe('items/box');
    for (const kind of itemKinds)
      expect(kindOfSheet(`kit.xlsx, ${kind === 'box' ? 'Boxes' : `${kind}s`}`, ['serial', 'model', 'depot'])).toBe(`items/${kind}`);
    expect(kindOfSheet('Boxes', ['model', 'weight kg', 'depth mm'])).toBe('models/boxes');
    expect(kindOfSheet('list.xlsx', spelt('examinations'))).toBe('examinations');
    expect(kindOfSheet('a.csv', [])).toBeUndefined();
  });

  it('no word for one column of a kind is the heading of another', () => {
    for (const kind of [...itemKinds.map((each) => `items/${each}`), ...modelKinds.map((each) => `models/${each}`), 'examinations'])
      expect(matchColumns(spelt(kind), knownColumns(kind))).toEqual(spelt(kind));
    expect(csvColumns('box').length + modelColumns('boxes').length).toBeGreaterThan(10);
  });
});

describe('a matched sheet', () => {
  const records = [['Our boxes'], ['Type', 'No', 'Serial'], ['Plover', '1', 'P-1'], ['', '', ''], ['Plover', '2', 'P-2']];

  it('is what is read of it under our headings, and knows the row and the column that it came from', () => {
    const sheet = matchedSheet(records, 1, ['model', null, 'serial']);
    expect(sheet.csv).toBe('model,serial\r\nPlover,P-1\r\nPlover,P-2\r\n');
    expect([1, 2, 3].map(sheet.rowOf)).toEqual([2, 3, 5]);
    expect(['model', 'serial', 'depot'].map(sheet.columnOf)).toEqual(['Type', 'Serial', 'depot']);
  });

  it('is given back as it came with what is wrong beside each row', () => {
    const faults = [
      { row: 5, said: 'Serial: wanted another' },
      { row: 5, said: 'Type: wanted a model' },
    ];
    expect(correctedRows(records, 1, faults)).toEqual([
      ['Our boxes', '', '', ''],
      ['Type', 'No', 'Serial', 'what is wrong'],
      ['Plover', '1', 'P-1', ''],
      ['', '', '', ''],
      ['Plover', '2', 'P-2', 'Serial: wanted another / Type: wanted a model'],
    ]);
  });
});
