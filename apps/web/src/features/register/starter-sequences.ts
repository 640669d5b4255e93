import type { RiggingSystem, RunningStep } from '#tour-file';

/** A family of rigging systems: where its joints close, and the usual steps (common practice, no published source), to be held against the manual. */
export interface StarterSequence {
  readonly name: string;
  readonly closing: NonNullable<RiggingSystem['closing']>;
  readonly goingUp: readonly RunningStep[];
  readonly comingDown: readonly RunningStep[];
}

type Written = Exclude<RunningStep, string>;
const read = (at: Written['at'], step: string, moments?: Written['moments']): Written => ({
  step,
  at,
  hold: false,
  ...(moments && { moments }),
});
const hold = (at: Written['at'], step: string, why: string, moments?: Written['moments']): Written => ({
  step,
  at,
  hold: true,
  why,
  ...(moments && { moments }),
});

const begin: readonly Written[] = [
  hold('start', 'Area below clear. One person is in charge of lifting and gives every word by radio; wind is read.', 'nobody stands below'),
  hold(
    'start',
    'Each hoist run alone a little and its direction seen; two or more then grouped and run together; stop tried; load cells at nought; chain bags hang clear.',
    'a hoist that runs the wrong way is found before it carries',
  ),
];
const end: readonly Written[] = [
  hold(
    'end',
    'At trim: tilt and load cells read beside what they should read. Secondary suspension on, control isolated.',
    'what hangs over people hangs as planned',
    ['at trim'],
  ),
];
const begunDown: readonly Written[] = [
  hold(
    'start',
    'Area below clear. Amplifiers muted, hoists checked, hang brought to its landing angle. Secondary suspension off only when the hoists carry.',
    'nobody stands below',
  ),
];
const ended: readonly Written[] = [
  read('end', 'Grid onto its case. Hoists, shackles and slings into their cases, each looked at. Pins counted.'),
];

const firstOnTheGround: readonly Written[] = [
  read(
    'first cart',
    'Cart under the grid, front to the audience. Grid down onto the top box; its joint closed on the ground, front pins and rear link.',
  ),
  hold('first cart', 'Two people look at every link pin and at the base pins.', 'nothing that is pinned wrong leaves the floor'),
];

/** Three families; the manual of the maker says which one a system is of and what is different. */
export const starterSequences: readonly StarterSequence[] = [
  {
    name: 'swung back and driven down',
    closing: { gridJoint: 'on the ground', cartJoints: 'swung back and driven down' },
    goingUp: [
      ...begin,
      ...firstOnTheGround,
      hold(
        'first cart',
        'Up until the cart is just clear. The boxes have opened: a lock pin into each; angles read.',
        'a wrong angle hangs for the whole show',
        ['linked and closed', 'opened and locked'],
      ),
      hold(
        'first cart',
        'Looms on; every box sounds before it is out of reach. Base off: rear supported, rear pins, down, then front.',
        'a silent box is reached now',
        ['opened and locked'],
      ),
      read('further carts', 'Splays set, lock pins stowed. Cart under the hang; hang down onto it; front pins of the joint.'),
      hold(
        'further carts',
        'Two people look at front pins and base pins. Up until the cart is clear: its boxes open; lock pins into these, not yet into the joint.',
        'the load hangs on its front pins alone',
        ['opened on front pins'],
      ),
      hold(
        'further carts',
        'Swung back by the tag line until faces touch; driven down until the link meets its spine; rear link pin in.',
        'the joint closes with force: hands clear',
        ['swung back', 'driven down'],
      ),
      hold(
        'further carts',
        'Up to its angle; lock pin of the joint; loom; every box sounds; base off, rear first.',
        'the base leaves only boxes that are locked',
        ['opened and locked'],
      ),
      ...end,
    ],
    comingDown: [
      ...begunDown,
      read('each cart', 'Loom off. Lift clear, base up to the bottom box: front pins, then rear pins.'),
      hold(
        'each cart',
        'Lock pins of the lowest boxes out, those that are unloaded; down until the cart carries them and faces touch.',
        'no pin is drawn that carries',
        ['lock pins drawn'],
      ),
      hold(
        'each cart',
        'Rear link of the joint above out, clear of its swing; a little up, so that it hangs on its front pins; down until the cart stands.',
        'what the link carried is set free',
        ['rear link drawn'],
      ),
      hold(
        'each cart',
        'Every lock pin of these boxes seen out; front pins out; poles and lid.',
        'what is still pinned is lifted with its cart',
      ),
      ...ended,
    ],
  },
  {
    name: 'on the floor at matched tilt',
    closing: { gridJoint: 'on the ground', cartJoints: 'on the floor at matched tilt' },
    goingUp: [
      ...begin,
      ...firstOnTheGround,
      hold(
        'first cart',
        'Up until the cart is just clear; boxes opened and locked, angles read.',
        'a wrong angle hangs for the whole show',
        ['linked and closed', 'opened and locked'],
      ),
      hold('first cart', 'Looms on; every box sounds; base off.', 'a silent box is reached now', ['base off']),
      hold(
        'further carts',
        'Tilt of the hang brought to that of the standing cart; down onto it; joint closed front and rear on the floor.',
        'hands clear: the joint closes under the whole hang',
        ['linked and closed'],
      ),
      hold(
        'further carts',
        'Two people look at the pins. Up until the cart is just clear; boxes opened and locked; loom; every box sounds; base off.',
        'the base leaves only boxes that are locked',
        ['opened and locked', 'base off'],
      ),
      ...end,
    ],
    comingDown: [
      ...begunDown,
      read('each cart', 'Loom off. Lift clear, base up to the bottom box and pinned.'),
      hold(
        'each cart',
        'Tilt matched to the floor; lock pins that are unloaded out; down until the cart carries its boxes.',
        'no pin is drawn that carries',
        ['lock pins drawn'],
      ),
      hold(
        'each cart',
        'Joint above opened, rear and front, once it carries nothing; up until the hang is clear.',
        'what the link carried is set free',
        ['rear link drawn'],
      ),
      ...ended,
    ],
  },
  {
    name: 'box by box',
    closing: { gridJoint: 'on the ground', cartJoints: 'box by box' },
    goingUp: [
      ...begin,
      ...firstOnTheGround,
      hold(
        'first cart',
        'Up until it is just clear; joints at their angles and locked; looms on; every box sounds.',
        'a wrong angle hangs for the whole show',
        ['opened and locked'],
      ),
      hold(
        'further carts',
        'Box below box: hang down to it, front pins, rear link, lock; up only when two people have looked at the joint.',
        'each joint carries everything that comes below',
        ['box joined'],
      ),
      ...end,
    ],
    comingDown: [
      ...begunDown,
      hold(
        'each cart',
        'Box by box from the bottom: box supported, its joint unloaded, lock, rear link and front pins out.',
        'no pin is drawn that carries',
        ['box joined'],
      ),
      ...ended,
    ],
  },
];
