import { useState } from 'react';
import { type FloorCommand, commandOf } from '#pack-plan';
import { Note } from '../../../ui/notes.js';
import { Camera } from './camera.js';
import { signal } from './signal.js';
import { useReader } from './use-reader.js';

/** Done, undo and fault by the codes on a lanyard, for gloves that do not work glass: by a reader that types, or by the camera. */
export function ByCode({ onCommand }: { onCommand: (command: FloorCommand, at: number) => void }) {
  const [said, setSaid] = useState<string | null>(null);
  const onCode = (code: string) => {
    const command = commandOf(code);
    if (command) {
      setSaid(null);
      return onCommand(command, performance.now());
    }
    signal(false);
    setSaid(`${code.trim().slice(0, 60)} is none of the codes done, undo and fault: nothing was noted.`);
  };
  useReader(onCode);
  return (
    <>
      {said && <Note weight="look">{said}</Note>}
      <Camera onCode={onCode} />
    </>
  );
}
