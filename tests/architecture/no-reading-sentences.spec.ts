import { Linter } from 'eslint';

const file = '../../.config/no-reading-sentences.js';

describe('the lint against reading sentences back', () => {
  let faults: (code: string) => number;
  beforeAll(async () => {
    const { noReadingSentences } = (await import(file)) as { noReadingSentences: never };
    const linter = new Linter();
    faults = (code) =>
      linter.verify(code, [{ plugins: { own: { rules: { read: noReadingSentences } } }, rules: { 'own/read': 'error' } }]).length;
  });

  it.each([
    "finding.sentence.startsWith('promises')",
    "stop.sentence?.includes('slot')",
    "reason.endsWith('.')",
    'row.why.match(/T1/)',
    '/T1\\b/.test(exception)',
    "/T1/.exec(each.title ?? '')",
    "sentence.toLowerCase().includes('stop')",
    "plan.exceptions[0].includes('row')",
    "if (finding.sentence === 'Plan again.') go()",
    'if (`x` !== reason) go()',
    "sentences.indexOf('a')",
  ])('refuses %s', (code) => {
    expect(faults(code)).toBe(1);
  });

  it.each([
    "finding.code.startsWith('booking')",
    "sentence === ''",
    "reason !== ''",
    'sentence.length > 200',
    'names.includes(sentence)',
    'say(sentence)',
    'sentence.trim()',
  ])('says nothing of %s', (code) => {
    expect(faults(code)).toBe(0);
  });
});
