import { type RefObject, useEffect, useRef, useState } from 'react';
import type { UseFormReturn } from 'react-hook-form';
import { canonicalJson, textHash } from '#kernel';
import { type Draft, draftOf, dropDraft, keepDraft } from '../platform/drafts.js';
import { momentOf } from '../platform/written.js';

const quietMs = 300;

/** Where a form is and what it began with: a draft is offered to the same form alone, and not where something else is on file by now. */
const keyOf = (beganWith: unknown): string => `${location.pathname} ${textHash(canonicalJson(beganWith))}`;

/**
 * Keeps what is typed in a form on this device until it is sent, and offers it again to whoever comes back to the form; who closes the page before is asked.
 * A form with a secret in it is never kept, nor one that keeps its drafts itself. `isLost`: what was sent did not arrive.
 */
export function useKeptDraft(form: UseFormReturn, element: RefObject<HTMLFormElement | null>, keeps: boolean, isLost: boolean) {
  const [beganWith] = useState(() => structuredClone(form.getValues()));
  const key = keyOf(beganWith);
  const [offered, setOffered] = useState<Draft | undefined>(() => (keeps ? draftOf(key) : undefined));
  const sent = useRef<unknown>(undefined);
  const isDirty = useRef(false);
  useEffect(() => {
    if (!keeps || element.current?.querySelector('input[type=password]')) return undefined;
    let later: ReturnType<typeof setTimeout> | undefined;
    const stop = form.subscribe({
      formState: { values: true, isDirty: true },
      callback: ({ values, isDirty: dirty = false }) => {
        isDirty.current = dirty;
        clearTimeout(later);
        if (!dirty) return dropDraft(key);
        sent.current = undefined;
        later = setTimeout(() => keepDraft(key, values), quietMs);
      },
    });
    const ask = (event: BeforeUnloadEvent): void => {
      if (isDirty.current && sent.current === undefined) event.preventDefault();
    };
    addEventListener('beforeunload', ask);
    return () => {
      clearTimeout(later);
      if (isDirty.current && sent.current === undefined) keepDraft(key, form.getValues());
      stop();
      removeEventListener('beforeunload', ask);
    };
    // The methods of a form are the same for its whole life.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [element, key, keeps]);
  useEffect(() => {
    if (keeps && isLost && sent.current !== undefined) keepDraft(key, sent.current);
  }, [keeps, isLost, key]);
  return {
    offered,
    takeUp: (): void => {
      const values = offered?.values as Record<string, unknown>;
      for (const [name, value] of Object.entries(values)) form.setValue(name, value, { shouldDirty: true });
      setOffered(undefined);
    },
    forget: (): void => {
      dropDraft(key);
      setOffered(undefined);
    },
    /** It is on its way: kept again only where it does not arrive. */
    wasSent: (): void => {
      sent.current = structuredClone(form.getValues());
      dropDraft(key);
      setOffered(undefined);
    },
  };
}

export function DraftNote({ of }: { of: ReturnType<typeof useKeptDraft> }) {
  if (!of.offered) return null;
  return (
    <p role="status">
      ◐ You typed something here on {momentOf(of.offered.at)} and did not send it.{' '}
      <button type="button" className="plain small" onClick={of.takeUp}>
        Take it up again
      </button>{' '}
      <button type="button" className="plain small" onClick={of.forget}>
        Forget it
      </button>
    </p>
  );
}
