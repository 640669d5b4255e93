import { useEffect, useRef, useState } from 'react';
import type { UseFormReturn } from 'react-hook-form';
import type { Hang } from '#tour-file';

/** Edits of hangs that were left unsaved, by show, while the page lives. */
const left = new Map<string, Hang[]>();

/** Whoever leaves by Back or a link finds the edits again; whoever closes the page is asked first. */
export function useKeptEdits(key: string, form: UseFormReturn<{ hangs: Hang[] }>) {
  const { isDirty } = form.formState;
  const state = useRef({ isDirty, isOver: false });
  useEffect(() => {
    state.current.isDirty = isDirty;
  });
  const [isBack, setBack] = useState(() => left.has(key));
  const { setValue, getValues } = form;
  useEffect(() => {
    const now = state.current;
    const kept = left.get(key);
    left.delete(key);
    if (kept) setValue('hangs', kept, { shouldDirty: true });
    return () => {
      if (now.isDirty && !now.isOver) left.set(key, structuredClone(getValues('hangs')));
    };
  }, [key, setValue, getValues]);
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
    },
    forget: (hangs: Hang[]): void => {
      setValue('hangs', structuredClone(hangs), { shouldDirty: true });
      setBack(false);
    },
  };
}
