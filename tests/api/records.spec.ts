import { recordFields } from '#trade';
import { createHash } from 'node:crypto';
import { lolerSchedule1 } from '#records';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

describe('records of examinations', () => {
  let test: TestApp;
  let safety: Agent;
  let warehouse: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [safety, warehouse] = await Promise.all([test.as('safety'), test.as('warehouse')]);
    const { errors } = await safety.graphql('mutation($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }', { rules: [listed] });
    expect(errors).toBeUndefined();
  });
  afterAll(() => test.close());

  const listed = {
    ...{ jurisdiction: 'UK', kinds: ['hoist'], intervals: ['P12M'], mayExamine: ['competent person'] },
    ...{ source: 'LOLER 1998 reg. 9(3)(a)(ii)', status: 'found' },
    record: { list: 'LOLER 1998 Schedule 1', source: 'LOLER 1998 reg. 10', status: 'found' },
    retention: { atLeast: 'P2Y', untilNextReport: true, source: 'LOLER 1998 reg. 11', status: 'found' },
  };
  const whole = {
    ...{ on: '2027-02-01', outcome: 'pass', nextLatestOn: '2028-02-01', examiner: 'B. Ropemaker', report: 'R-77' },
    particulars: {
      ...{ employer: 'Ferry Lane Hire, 1 Ferry Lane', premises: 'the depot', manufactured: '2021', previousOn: '2026-02-01' },
      ...{ workingLoadLimit: '2,500 kg', firstAfterInstallation: false, basis: 'within 12 months', statement: 'fit for use as marked' },
      ...{ defects: [], tests: 'none', examinerAddress: '2 Ferry Lane', qualifications: 'engineer surveyor', capacity: 'competent person' },
      ...{ employedBy: 'self-employed', authenticatedBy: 'B. Ropemaker, 2 Ferry Lane', reportOn: '2027-02-02' },
    },
  };
  const record = `mutation($id: ID!, $examination: AnyJson!) { recordExamination(itemId: $id, examination: $examination) {
    records(first: 1) { edges { node { examination kept lines file { id name sizeBytes sha256 } } } } } }`;
  const counts = () =>
    test.dataSource.query('SELECT (SELECT count(*) FROM examination) AS records, (SELECT count(*) FROM report_file) AS files');
  const faultsOf = async (id: string, examination: object) => {
    const before = await counts();
    const { errors } = await safety.graphql(record, { id, examination });
    expect(await counts()).toEqual(before);
    return errors?.[0]?.extensions.faults as { field: string; value: unknown; wanted: string }[];
  };
  const send = (type: string, body: Buffer) =>
    safety.fetch('/api/reports/H-01?name=report.pdf', {
      method: 'POST',
      headers: { 'content-type': type, 'x-cartwright': '1' },
      body: body as never,
    });

  it('hold every field of the list, the file with its hash, and until when they are kept', async () => {
    const bytes = Buffer.from('%PDF-1.4 an invented report of every field');
    const { id } = (await (await send('application/pdf', bytes)).json()) as { id: string };
    expect(((await (await send('application/pdf', bytes)).json()) as { id: string }).id).toBe(id);
    const { data, errors } = await safety.graphql(record, { id: 'H-01', examination: { ...whole, reportFile: id } });
    expect(errors).toBeUndefined();
    const { node } = data.recordExamination.records.edges[0];
    expect(node.examination).toEqual({ ...whole, reportFile: id });
    expect(node.file).toEqual({
      ...{ id, name: 'report.pdf', sizeBytes: bytes.length },
      sha256: createHash('sha256').update(bytes).digest('hex'),
    });
    expect(node.kept).toEqual({ until: { code: 'next-report', atLeast: '2029-02-02' }, sources: ['LOLER 1998 reg. 11'] });
    expect(node.lines.filter((each: any) => each.isMissing)).toEqual([]);
    expect(node.lines.map((each: any) => each.field)).toEqual(expect.arrayContaining(lolerSchedule1.map((each) => each.field)));
  });

  it('without what the list asks for are refused, with one fault a field and where it is asked', async () => {
    const faults = await faultsOf('H-01', { on: '2027-02-03', outcome: 'pass', examiner: 'B. Ropemaker', report: 'R-78' });
    const always = lolerSchedule1
      .map((each) => each.field)
      .filter((each) => !['installedStatement', 'identity', 'examiner'].includes(each));
    expect(faults.map((each) => each.field.replace('particulars.', '')).sort()).toEqual([...always].sort());
    expect(faults.find((each) => each.field === 'particulars.employer')).toEqual({
      ...{ field: 'particulars.employer', value: null },
      wanted: 'name and address of the employer for whom it was made: LOLER 1998 Schedule 1, paragraph 1 asks for it',
    });
  });

  it('of a kind whose rule has no list need who and which report, as before', async () => {
    const { errors } = await safety.graphql(record, {
      id: 'SH-1',
      examination: { on: '2027-02-03', outcome: 'pass', examiner: 'B. Ropemaker', report: 'R-79' },
    });
    expect(errors).toBeUndefined();
  });

  const particulars = (more: object) => ({ ...whole, particulars: { ...whole.particulars, ...more } });
  it.each<[what: string, examination: object, field: string]>([
    ['in the future', { ...whole, on: '2027-12-01', particulars: { ...whole.particulars, reportOn: '2027-12-01' } }, 'on'],
    ['whose next day is before it', { ...whole, nextLatestOn: '2027-01-01' }, 'nextLatestOn'],
    ['of an unknown outcome', { ...whole, outcome: 'fine' }, 'outcome'],
    ['that satisfies an interval of nothing', { ...whole, satisfies: ['P0D'] }, 'satisfies[0]'],
    ['by somebody who may not examine', particulars({ capacity: 'passer-by' }), 'particulars.capacity'],
    ['that passes with a danger', particulars({ defects: [{ part: 'hook', what: 'cracked' }] }), 'particulars.defects[0].dangerousBy'],
    ['of a field that there is not', particulars({ colour: 'red' }), 'particulars.colour'],
    ['with a report of another item', { ...whole, reportFile: '5f0c3b1e-7a52-4d43-9d6c-0d2f7c1f6a11' }, 'reportFile'],
  ])('%s are refused by field, and nothing is stored', async (_what, examination, field) => {
    expect((await faultsOf('H-01', examination)).map((each) => each.field)).toContain(field);
  });

  it.each([
    ['of 40 MB', 'application/pdf', Buffer.concat([Buffer.from('%PDF-1.4'), Buffer.alloc(40_000_000)]), 413, /at most 20 MB/],
    ['that is no PDF', 'application/pdf', Buffer.from('MZ a program'), 415, /a file that is PDF, as it says/],
    ['that is a PDF and says PNG', 'image/png', Buffer.from('%PDF-1.4'), 415, /a file that is PNG, as it says/],
    ['that is empty', 'application/pdf', Buffer.alloc(0), 415, /not empty/],
    ['of another type', 'image/gif', Buffer.from('GIF89a'), 415, /a file of type application\/pdf/],
  ])('a report %s is refused in words, and nothing is stored', async (_what, type, body, status, wanted) => {
    const before = await counts();
    const reply = await send(type, body);
    expect(reply.status).toBe(status);
    const { faults } = (await reply.json()) as { faults: { wanted: string }[] };
    expect(faults[0]?.wanted).toMatch(wanted);
    expect(await counts()).toEqual(before);
  });

  it('a hash is held to its bytes by the database', async () => {
    await expect(
      test.dataSource.query(
        `INSERT INTO report_file (id, item_id, name, type, bytes, sha256, kept_by, kept_at) VALUES (gen_random_uuid(), 'H-01', 'a', 'application/pdf', 'abc', 'abc', 'x', now())`,
      ),
    ).rejects.toThrow(/report_file_hash_agrees/);
  });

  it('are read by everybody who is signed in', async () => {
    const { data } = await warehouse.graphql('{ item(id: "H-01") { records(first: 1) { edges { node { lines } } } } }');
    expect(data.item.records.edges[0].node.lines).toHaveLength(recordFields.length);
  });
});
