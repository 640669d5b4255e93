import type { Words } from '../../table/index.js';

const cannot = (reason: string): string => `Cannot hang like this: ${reason}`;

export const cannotHang: Words['cannotHang'] = {
  'bridle-legs': () => 'A bridle has two or three legs.',
  'anchor-not-above': () => cannot('an anchor is not above the hook.'),
  'hook-would-swing': () => cannot('the legs do not hold the hook where it is drawn; it would swing.'),
  'leg-would-push': () => cannot('a leg would have to push. The hook must hang between its anchors.'),
  'wants-tilt': () => cannot('with one pick a pull-back needs the tilt that is wanted.'),
  'wants-tension': () => cannot('with two picks a pull-back needs the tension of its line.'),
  'no-such-box': ({ position }) => cannot(`there is no box ${position}.`),
  'anchor-at-point': () => cannot('the anchor is at the point that it pulls.'),
  'drawn-too-far': () => cannot('the hang finds no rest with this line; it is drawn too far aside.'),
  'line-through-pick': () => cannot('the line runs through the pick and turns nothing.'),
  'line-would-push': () => cannot('the line would have to push to reach this tilt; the anchor is on the wrong side.'),
  'line-lifts': ({ picks }) => cannot(`the line lifts the hang out of its ${picks === 1 ? 'chain' : 'chains'}.`),
};

const newtons = (value: number): string => `${Math.round(value)} N`;
const kilograms = (value: number): string => `${Math.round(value * 10) / 10} kg`;

export const hangRemarks: Words['hangRemarks'] = {
  'cannot-hang-like-this': ({ hole, pushNewtons }) =>
    cannot(`the pick at hole ${hole} would have to push with ${newtons(pushNewtons)}, and a chain cannot push.`),
  'over-rated-load': ({ part, at, value, rated }) =>
    part === 'hook'
      ? `The hook at hole ${at} would carry ${kilograms(value)}, more than the rated ${kilograms(rated)}.`
      : `${part === 'rear link' ? 'The rear link' : 'A front pin'} above box ${at} carries ${newtons(value)}, more than the rated ${newtons(rated)}.`,
  'reversed-link': ({ position, newtons: pushed }) =>
    `The rear link above box ${position} is pushed together with ${newtons(pushed)} instead of pulled.`,
  'front-pins-push': ({ position }) => `The front pins above box ${position} push instead of carry: the load hangs behind the rear link.`,
  'no-rated-value': ({ boxes, of }) => `No rated value on file for the joints of ${boxes} of ${of} boxes: their forces cannot be compared.`,
};
