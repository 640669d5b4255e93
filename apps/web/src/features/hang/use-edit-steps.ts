import { useEffect, useRef, useState } from 'react';
import type { UseFormReturn } from 'react-hook-form';
import { canonicalJson } from '#kernel';
import type { Hang } from '#tour-file';
import { type Steps, firstStep, stepBack, stepOn, stepTo } from './steps-of-edits.js';

/** Letters typed within this time are one step, ms. */
const oneStepMs = 400;
const same = (one: Hang[], other: Hang[]): boolean => canonicalJson(one) === canonicalJson(other);

/** Every edit of the hangs can be taken back, one after the other, and made again. */
export function useEditSteps({ getValues, setValue, subscribe }: UseFormReturn<{ hangs: Hang[] }>) {
  const steps = useRef<Steps<Hang[]>>(firstStep(structuredClone(getValues('hangs'))));
  const [left, setLeft] = useState({ back: 0, on: 0 });
  const set = (next: Steps<Hang[]>): void => {
    steps.current = next;
    setLeft({ back: next.past.length, on: next.future.length });
  };
  useEffect(() => {
    let later: ReturnType<typeof setTimeout> | undefined;
    const stop = subscribe({
      formState: { values: true },
      callback: () => {
        clearTimeout(later);
        later = setTimeout(() => set(stepTo(steps.current, structuredClone(getValues('hangs')), same)), oneStepMs);
      },
    });
    return () => {
      clearTimeout(later);
      stop();
    };
  }, [getValues, subscribe]);
  const go = (to: (steps: Steps<Hang[]>) => Steps<Hang[]>): void => {
    set(to(stepTo(steps.current, structuredClone(getValues('hangs')), same)));
    setValue('hangs', structuredClone(steps.current.now), { shouldDirty: true });
  };
  return { left, back: () => go(stepBack), on: () => go(stepOn) };
}
