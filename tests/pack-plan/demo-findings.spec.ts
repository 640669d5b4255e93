import { readFileSync } from 'node:fs';
import { main } from '../../apps/cli/plan.js';

/** What `npm run plan -- FILE --json` says of the demo tour is read by others: its keys and its findings stay. */
describe('the plan of the demo tour as JSON', () => {
  let plan: Record<string, any>;
  beforeAll(async () => {
    const written: string[] = [];
    const write = process.stdout.write.bind(process.stdout);
    process.stdout.write = (text: string | Uint8Array) => written.push(String(text)) > 0;
    try {
      expect(await main(['tests/examples/demo-tour.json', '--json'])).toBe(0);
    } finally {
      process.stdout.write = write;
    }
    plan = JSON.parse(written.join(''));
  });

  it('has its six keys', () => {
    expect(Object.keys(plan)).toEqual(['carts', 'picks', 'hardware', 'truck', 'due', 'findings']);
  });

  it('gives each finding its weight, section, code, subject, date and sentence, as they were', () => {
    const findings = plan.findings.map(({ weight, section, code, subject, date, sentence }: any) => ({
      weight,
      section,
      code,
      subject,
      date,
      sentence,
    }));
    expect(findings).toEqual(JSON.parse(readFileSync('tests/pack-plan/demo-findings.json', 'utf8')));
  });
});
