import { type ReactNode, useEffect, useId, useRef, useState } from 'react';

/** A button that shows what stands behind it (the disclosure pattern of WAI-ARIA). Escape, a choice, or going elsewhere closes it. */
export function Menu({ name, isHere, children }: { name: ReactNode; isHere?: boolean; children: ReactNode }) {
  const [isOpen, setOpen] = useState(false);
  const whole = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const id = useId();
  useEffect(() => {
    if (!isOpen) return undefined;
    const close = () => setOpen(false);
    const elsewhere = (event: Event) => {
      if (!whole.current?.contains(event.target as Node)) close();
    };
    const escape = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      close();
      button.current?.focus();
    };
    // A choice is made before what it stood in is gone.
    const chosen = (event: Event) => {
      if ((event.target as Element).closest('a, button')) close();
    };
    const panel = document.getElementById(id);
    for (const each of ['pointerdown', 'focusin']) document.addEventListener(each, elsewhere);
    document.addEventListener('keydown', escape);
    panel?.addEventListener('click', chosen);
    return () => {
      for (const each of ['pointerdown', 'focusin']) document.removeEventListener(each, elsewhere);
      document.removeEventListener('keydown', escape);
      panel?.removeEventListener('click', chosen);
    };
  }, [isOpen, id]);
  return (
    <div className="menu" ref={whole}>
      <button
        type="button"
        ref={button}
        className={isHere ? 'plain active' : 'plain'}
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => setOpen(!isOpen)}
      >
        {name} <span aria-hidden="true">{isOpen ? '▴' : '▾'}</span>
      </button>
      <div id={id} hidden={!isOpen}>
        {children}
      </div>
    </div>
  );
}
