import { useState } from 'react';
import { useNavigate } from 'react-router';
import { type FloorCommand, commandOf } from '#pack-plan';
import { Note } from '../../../ui/notes.js';
import { Camera } from './camera.js';
import { signal } from './signal.js';
import { useReader } from './use-reader.js';

interface Commands {
  readonly home: string;
  readonly done: (at: number) => void;
  readonly undo: (at: number) => void;
  /** Nothing is noted by who only looks. */
  readonly isLooking?: boolean;
}

/** What the codes do on a screen with one thing in hand. */
export function useCommands({ home, done, undo, isLooking = false }: Commands): (said: FloorCommand, at: number) => void {
  const navigate = useNavigate();
  return (said, at) => {
    if (said === 'fault') return void navigate(`${home}/fault`);
    if (isLooking) return signal(false);
    return said === 'done' ? done(at) : undo(at);
  };
}

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
