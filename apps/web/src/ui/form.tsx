import { zodResolver } from '@hookform/resolvers/zod';
import { type ReactNode, useEffect, useId, useRef } from 'react';
import {
  type DefaultValues,
  type FieldValues,
  FormProvider,
  type UseFormReset,
  type UseFormReturn,
  set,
  useForm,
  useFormContext,
} from 'react-hook-form';
import type { z } from 'zod';
import { canonicalJson, readInput } from '#kernel';
import { Refused } from '../platform/request.js';
import { Faults } from './faults.js';
import { DraftNote, useKeptDraft } from './kept-draft.js';

type Typed = FieldValues;

/**
 * A form whose fields hold what was typed, as text, and whose schema reads it. `from` is what is on file: when it is read again, fields that nobody
 * touched follow it, and what was typed stays. Nothing is judged before it is sent: a sentence that appears under a field as it is left would move
 * the button that is being pressed.
 */
export function useTypedForm<In extends Typed, Out>(schema: z.ZodType<Out, In>, from: In): UseFormReturn<In, unknown, Out> {
  const form = useForm<In, unknown, Out>({
    resolver: zodResolver(schema as never) as never,
    defaultValues: from as DefaultValues<In>,
    mode: 'onSubmit',
  });
  useFollowed(form.reset, from);
  return form;
}

/**
 * What is on file, read again: fields that nobody touched follow it. The library's own way (`values` with `resetOptions`) keeps what was typed at every
 * reset, also at one that is asked for because it was sent.
 */
function useFollowed<In extends Typed>(reset: UseFormReset<In>, from: In): void {
  const seen = useRef(from);
  useEffect(() => {
    if (canonicalJson(seen.current) === canonicalJson(from)) return;
    seen.current = from;
    reset(from, { keepDirtyValues: true, keepErrors: true, keepFieldsRef: true });
  }, [reset, from]);
}

/** A form that holds the thing itself, read by its own schema: faults in the words of every other reader of it. */
export function useFormOf<In extends Typed>(schema: z.ZodType<In>, from: In): UseFormReturn<In> {
  const form = useForm<In>({
    resolver: (given) => {
      const read = readInput(schema, given);
      const errors = {};
      if (!read.ok)
        for (const { field, wanted } of read.error)
          set(errors, namePath(field), { type: 'schema', message: wanted.replace(/^required: /, '') });
      return read.ok ? { values: given, errors: {} } : { values: {}, errors };
    },
    defaultValues: from as DefaultValues<In>,
    mode: 'onSubmit',
  });
  useFollowed(form.reset, from);
  return form;
}

/** hangs[0].boxes[2].serial as a form writes it: hangs.0.boxes.2.serial. */
export const namePath = (path: string): string => path.replaceAll(/\[(\d+)\]/g, '.$1');

/** A fault of a field that somebody else wrote meanwhile. */
const met = 'met';

/** What the other side found is said beside the field that it is about; `fieldOf` gives its name where the path does not end in it. */
export function Form<In extends Typed, Out>({
  form,
  onSubmit,
  error,
  fieldOf,
  className,
  keeps = true,
  children,
}: {
  form: UseFormReturn<In, unknown, Out>;
  onSubmit: (values: Out) => void;
  error?: unknown;
  fieldOf?: (path: string) => string | undefined;
  className?: string;
  /** False: the form keeps its drafts itself. */
  keeps?: boolean;
  children: ReactNode;
}) {
  const { setError } = form;
  const element = useRef<HTMLFormElement>(null);
  const draft = useKeptDraft(form as unknown as UseFormReturn, element, keeps, Boolean(error));
  const send = (values: Out): void => {
    draft.wasSent();
    onSubmit(values);
  };
  const names = Object.keys(form.getValues());
  const nameOf = (path: string): string | undefined => fieldOf?.(path) ?? names.find((name) => path === name || path.endsWith(`.${name}`));
  useEffect(() => {
    if (!(error instanceof Refused)) return;
    for (const { field, column, wanted, onFile } of error.faults) {
      const name = nameOf(column ?? field ?? '');
      // Of what two people wrote neither is wrong: the sentence says both.
      const [type, said] =
        onFile === undefined ? ['server', wanted.replace(/^required: /, '')] : [met, wanted.replace(/^one of two: /, '')];
      if (name) setError(name as never, { type, message: said });
    }
    // Said once, when the answer comes; typing takes it away again.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [error]);
  return (
    <FormProvider {...(form as unknown as UseFormReturn)}>
      <form ref={element} noValidate className={className} onSubmit={(event) => void form.handleSubmit(send)(event)}>
        <DraftNote of={draft} />
        {children}
        <Faults of={error} />
      </form>
    </FormProvider>
  );
}

interface FieldProps {
  readonly name: string;
  readonly label: string;
  /** Said before it is typed: the form of the value, by an example. */
  readonly description?: ReactNode;
  /** Read out in place of the label where several lines have the same. */
  readonly ariaLabel?: string;
}

/** Label, what is typed, and below it what is wrong: found and wanted; both are named to those who hear the page. */
function Around({ name, label, description, secret, children }: FieldProps & { secret?: boolean; children: (said: Said) => ReactNode }) {
  const { getFieldState, formState, getValues } = useFormContext();
  const { error } = getFieldState(name, formState);
  const id = useId();
  const typed: unknown = error ? getValues(name) : '';
  const found = typed === '' || typed === undefined ? 'empty' : secret ? 'not this' : `found ${shown(typed)}`;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {children({ id, 'aria-invalid': error !== undefined, 'aria-describedby': error || description ? `${id}-say` : undefined })}
      {(error || description) && (
        <small id={`${id}-say`} className={error ? 'fault' : 'quiet'} role={error ? 'alert' : undefined}>
          {error ? `■ ${error.type === met ? '' : `${found}: wanted `}${error.message ?? ''}` : description}
        </small>
      )}
    </div>
  );
}

interface Said {
  readonly id: string;
  readonly 'aria-invalid': boolean;
  readonly 'aria-describedby': string | undefined;
}

const shown = (typed: unknown): string => (typeof typed === 'string' ? `“${typed.slice(0, 40)}”` : JSON.stringify(typed).slice(0, 40));

/** What is wrong with a field that stands in a table or has no label of its own. */
export function FieldError({ name }: { name: string }) {
  const { getFieldState, formState } = useFormContext();
  const { error } = getFieldState(name, formState);
  const message = error?.message ?? (error as { root?: { message?: string } } | undefined)?.root?.message;
  return message === undefined ? null : (
    <small className="fault" role="alert">
      ■ wanted {message}
    </small>
  );
}

type Kind = 'text' | 'email' | 'password' | 'date';

/** One line of text, a day, a password. What is secret is never said back. */
export function Field({
  type = 'text',
  autoComplete = 'off',
  readOnly,
  list,
  ...props
}: FieldProps & { type?: Kind; autoComplete?: string; readOnly?: boolean; list?: string }) {
  const { register } = useFormContext();
  return (
    <Around {...props} secret={type === 'password'}>
      {(said) => (
        <input
          {...register(props.name)}
          {...said}
          type={type}
          autoComplete={autoComplete}
          readOnly={readOnly}
          list={list}
          aria-label={props.ariaLabel}
        />
      )}
    </Around>
  );
}

/** A number as it is typed; an emptied one stays empty. */
export function Figure({ unit, placeholder, ...props }: FieldProps & { unit?: string; placeholder?: string }) {
  const { register } = useFormContext();
  const label = unit ? `${props.label}, ${unit}` : props.label;
  return (
    <Around {...props} label={label}>
      {(said) => (
        <input
          {...register(props.name)}
          {...said}
          inputMode="decimal"
          autoComplete="off"
          placeholder={placeholder}
          aria-label={props.ariaLabel}
        />
      )}
    </Around>
  );
}

export const asNumber = { setValueAs: (typed: unknown): unknown => (typed === '' || typed === undefined ? undefined : Number(typed)) };
export const asText = { setValueAs: (typed: unknown): unknown => (typed === '' ? undefined : typed) };

/** A number of the thing itself: emptied, it is missing, not nought. */
export function NumberField({ unit, placeholder, ...props }: FieldProps & { unit?: string; placeholder?: string }) {
  const { register } = useFormContext();
  return (
    <Around {...props} label={unit ? `${props.label}, ${unit}` : props.label}>
      {(said) => <input {...register(props.name, asNumber)} {...said} type="number" step="any" placeholder={placeholder} />}
    </Around>
  );
}

/** A text of the thing itself: emptied, it is left out. */
export function TextField(props: FieldProps) {
  const { register } = useFormContext();
  return <Around {...props}>{(said) => <input {...register(props.name, asText)} {...said} autoComplete="off" />}</Around>;
}

export function LongText(props: FieldProps) {
  const { register } = useFormContext();
  return <Around {...props}>{(said) => <textarea rows={2} {...register(props.name)} {...said} />}</Around>;
}

/** One of several, each as value and word. */
export function Choice({ choices, ...props }: FieldProps & { choices: readonly (readonly [value: string, word: string])[] }) {
  const { register } = useFormContext();
  return (
    <Around {...props}>
      {(said) => (
        <select {...register(props.name)} {...said}>
          {choices.map(([value, word]) => (
            <option key={value} value={value}>
              {word}
            </option>
          ))}
        </select>
      )}
    </Around>
  );
}

export function Tick({ name, label }: Pick<FieldProps, 'name' | 'label'>) {
  const { register } = useFormContext();
  return (
    <label className="row">
      <input type="checkbox" className="tick" {...register(name)} />
      {label}
    </label>
  );
}
