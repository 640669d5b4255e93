import { type FormEvent, useRef, useState } from 'react';
import { useReader } from './use-reader.js';

/**
 * Where a code is typed, or comes from a reader that types. What a reader types while nothing has the focus is read as well, and its Enter presses nothing.
 */
export function CodeField({ label, onCode }: { label: string; onCode: (code: string) => void }) {
  const [text, setText] = useState('');
  const field = useRef<HTMLInputElement>(null);
  useReader(onCode);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() === '') return;
    onCode(text);
    setText('');
    field.current?.focus();
  };
  return (
    <form onSubmit={submit}>
      <label>
        {label}
        <span className="read">
          <input
            ref={field}
            value={text}
            // On a phone the keyboard would cover the answer.
            autoFocus={matchMedia('(pointer: fine)').matches}
            autoComplete="off"
            autoCapitalize="characters"
            autoCorrect="off"
            spellCheck={false}
            enterKeyHint="go"
            maxLength={300}
            onChange={(event) => setText(event.target.value)}
          />
          <button type="submit" className="plain">
            Read
          </button>
        </span>
      </label>
    </form>
  );
}
