import { type HangAnswer, type PullBack, type PulledHang, solveHang, solvePullBack, verifyHang, verifyPullBack } from '#hang-statics';
import { changedNumbers } from '../../tests/support/changed-numbers.js';
import { hangFrom } from '../../tests/support/random-hang.js';

const raw = {
  tilt: 3,
  grid: { massKg: 80, cgBehindMm: 300, cgAboveMm: 50 },
  front: 0,
  span: 800,
  boxes: [0, 1, 4].map((splayDeg) => ({ massKg: 60, frontHeightMm: 300, cgBehindMm: 250, cgBelowMm: 150, rearLeverMm: 500, splayDeg })),
};
const two = hangFrom(raw);
const one = hangFrom(raw, 1);

/** The claim at a path -> the sentence that must name it. */
const sentences: readonly (readonly [RegExp, RegExp])[] = [
  [/^tiltDownDeg$/, /tiltDownDeg|moment of the hang|centre of gravity/],
  [/^bottomAimDownDeg$/, /bottomAimDownDeg/],
  [/^massKg$/, /massKg/],
  [/^centreOfGravity\.xMm$/, /^centre of gravity/m],
  [/^centreOfGravity\.zMm$/, /height of the centre of gravity/],
  [/^picks\.\d\.reactionN$/, /sum of reactions/],
  [/^picks\.\d\.hookLoadKg$/, /hookLoadKg of [ab]/],
  [/^picks\.\d\.pointLoadN$/, /pointLoadN of [ab]/],
  [/^picks\.\d\.pointLoadDynamicN$/, /pointLoadDynamicN of [ab]/],
  [/^slackAtDeg\.rearSlack$/, /rearSlack/],
  [/^slackAtDeg\.frontSlack$/, /frontSlack/],
  [/^joints\.\d\.position$/, /joint \d is called/],
  [/^joints\.\d\.loadN$/, /load below joint \d/],
  [/^joints\.\d\.rearLinkN$/, /moment at joint \d/],
  [/^joints\.\d\.frontPins\.xN$/, /horizontal balance of joint \d/],
  [/^joints\.\d\.frontPins\.zN$/, /vertical balance of joint \d/],
  [/^joints\.\d\.frontPinN$/, /front pin of joint \d/],
];

describe('the checker of a hang names the figure that is wrong', () => {
  it.each([...changedNumbers(solveHang(two), ['findings'])])('%s, with two picks', (path, answer) => {
    expect(verifyHang(two, solveHang(two))).toEqual([]);
    expect(verifyHang(two, answer as HangAnswer).join('\n')).toMatch(sentenceFor(path));
  });

  it.each([...changedNumbers(solveHang(one), ['findings'])])('%s, with one pick', (path, answer) => {
    expect(verifyHang(one, solveHang(one))).toEqual([]);
    expect(verifyHang(one, answer as HangAnswer).join('\n')).toMatch(sentenceFor(path));
  });

  it('and what is missing, too much, upside down or of no hole', () => {
    const answer = solveHang(two);
    expect(verifyHang(two, { ...answer, joints: answer.joints.slice(1) }).join()).toMatch(/2 joints are answered of 3/);
    expect(verifyHang(two, { ...answer, picks: answer.picks.slice(1) }).join()).toMatch(/1 picks are answered of 2/);
    const { slackAtDeg, ...rest } = answer;
    expect(verifyHang(two, rest)).toEqual(['two picks have slack tilts']);
    expect(verifyHang(one, { ...solveHang(one), slackAtDeg: slackAtDeg! })).toEqual(['one pick has no slack tilts']);
    const over = { rearSlack: slackAtDeg!.rearSlack + 180, frontSlack: slackAtDeg!.frontSlack };
    expect(verifyHang(two, { ...answer, slackAtDeg: over }).join()).toMatch(/^rearSlack/);
    const lost = answer.picks.map((pick) => ({ ...pick, hole: 'z' }));
    expect(verifyHang(two, { ...answer, picks: lost })).toEqual(['hole z is not on the grid']);
    const pushed = answer.joints.map((joint) => ({ ...joint, frontPinN: -joint.frontPinN }));
    expect(verifyHang(two, { ...answer, joints: pushed }).join()).toMatch(/front pin of joint 1/);
  });
});

const sentenceFor = (path: string): RegExp => {
  const found = sentences.find(([field]) => field.test(path));
  if (!found) throw new Error(`no sentence for ${path}`);
  return found[1];
};

const pulls: readonly (readonly [RegExp, RegExp])[] = [
  [/^tiltDownDeg$/, /^tilt is off/m],
  [/^bottomAimDownDeg$/, /aim of the bottom box/],
  [/^tensionN$/, /^tension is off/m],
  [/^line\.at\./, /where the line holds/],
  [/^line\.[xz]N$/, /pull of the line/],
  [/^anchorForce\./, /direction of the line|^tension/m],
  [/^lineLengthMm$/, /length of the line/],
  [/^lineBelowHorizontalDeg$/, /angle of the line/],
  [/^chainsInclineDeg$/, /chain of hole|drawn aside/],
  [/^drawnAsideMm$/, /drawn aside/],
  [/^picks\.\d\.verticalN$/, /the hang, along z/],
  [/^picks\.\d\.horizontalN$/, /the hang, along x/],
  [/^picks\.\d\.alongN$/, /force along the chain of hole/],
  [/^joints\.\d\.position$/, /joint \d is called/],
  [/^joints\.\d\.loadN$/, /load below joint \d/],
  [/^joints\.\d\.rearLinkN$/, /below joint \d, moment/],
  [/^joints\.\d\.frontPins\.xN$/, /below joint \d, along x/],
  [/^joints\.\d\.frontPins\.zN$/, /below joint \d, along z/],
  [/^joints\.\d\.frontPinN$/, /front pin of joint \d/],
];

const line: PullBack = { position: 3, behindMm: 500, belowMm: 150, anchor: { xMm: -6000, zMm: -9000 }, chainMm: 6000 };
const pulled = (problem: typeof two, pull: PullBack): PulledHang => {
  const answer = solvePullBack(problem, pull);
  if (!answer.ok) throw new Error(answer.reason.code);
  return answer.value;
};

describe('the checker of a pull-back names the figure that is wrong', () => {
  const givenTension = { ...line, tensionN: 400 };
  const wantedTilt = { ...line, tiltDownDeg: solveHang(one).tiltDownDeg + 4 };
  it.each([...changedNumbers(pulled(two, givenTension))])('%s, with two picks', (path, answer) => {
    expect(verifyPullBack(two, givenTension, pulled(two, givenTension))).toEqual([]);
    const [, sentence] = pulls.find(([field]) => field.test(path)) ?? [];
    expect(verifyPullBack(two, givenTension, answer as PulledHang).join('\n')).toMatch(sentence ?? path);
  });

  it.each([...changedNumbers(pulled(one, wantedTilt))])('%s, with one pick', (path, answer) => {
    expect(verifyPullBack(one, wantedTilt, pulled(one, wantedTilt))).toEqual([]);
    const [, sentence] = pulls.find(([field]) => field.test(path)) ?? [];
    expect(verifyPullBack(one, wantedTilt, answer as PulledHang).join('\n')).toMatch(sentence ?? path);
  });

  it('and a line that pushes, and a tension that is not the given one', () => {
    const answer = pulled(two, givenTension);
    const turned = { ...answer, anchorForce: { xN: -answer.anchorForce.xN, zN: -answer.anchorForce.zN } };
    expect(verifyPullBack(two, givenTension, turned)).toContain('the line pushes');
    expect(verifyPullBack(two, { ...givenTension, tensionN: 500 }, answer).join()).toMatch(/tension that is given/);
  });
});
