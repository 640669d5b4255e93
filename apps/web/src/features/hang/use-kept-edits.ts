import { useEffect, useRef, useState } from 'react';
import type { UseFormReturn } from 'react-hook-form';
import type { Hang } from '#tour-file';
import { draftOf, dropDraft, keepDraft } from '../../platform/drafts.js';

const quietMs = 300;

/** Edits of hangs that are not saved are kept on this device: whoever leaves by Back or a link finds them again; whoever closes the page is asked first. */
export function useKeptEdits(key: string, form: UseFormReturn<{ hangs: Hang[] }>) {
  const { isDirty } = form.formState;
  const state = useRef({ isDirty, isOver: false });
  useEffect(() => {
    state.current.isDirty = isDirty;
  });
  const [isBack, setBack] = useState(() => draftOf(key) !== undefined);
  const { setValue, getValues, subscribe } = form;
  useEffect(() => {
    const now = state.current;
    const kept = draftOf(key)?.values as Hang[] | undefined;
    if (kept) setValue('hangs', kept, { shouldDirty: true });
    let later: ReturnType<typeof setTimeout> | undefined;
    const keep = (): void => {
      if (now.isDirty && !now.isOver) keepDraft(key, getValues('hangs'));
    };
    const stop = subscribe({
      formState: { values: true },
      callback: () => {
        clearTimeout(later);
        later = setTimeout(keep, quietMs);
      },
    });
    return () => {
      clearTimeout(later);
      keep();
      stop();
    };
  }, [key, setValue, getValues, subscribe]);
  useEffect(() => {
    if (!isDirty) return undefined;
    const ask = (event: BeforeUnloadEvent): void => event.preventDefault();
    addEventListener('beforeunload', ask);
    return () => removeEventListener('beforeunload', ask);
  }, [isDirty]);
  return {
    /** True while what was left earlier stands in the form. */
    isBack,
    /** Saved: nothing is left. */
    end: (): void => {
      state.current.isOver = true;
      dropDraft(key);
    },
    forget: (hangs: Hang[]): void => {
      dropDraft(key);
      setValue('hangs', structuredClone(hangs), { shouldDirty: true });
      setBack(false);
    },
  };
}
