import { type Awake, useAwake } from './stay-awake.js';

const words: Readonly<Record<Awake, string>> = {
  awake: 'The screen stays on while this is open.',
  'not here':
    'This browser lets the screen go dark (it keeps it on for https addresses, where it can at all): set a long time until it sleeps in the settings of the device.',
  'not now': 'The device lets the screen go dark just now, as with a low battery: set a long time until it sleeps, or charge it.',
};

/** While both hands are on the load. */
export function StaysAwake() {
  return <p className="quiet">{words[useAwake()]}</p>;
}
