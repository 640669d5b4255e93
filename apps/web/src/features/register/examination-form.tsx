import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { z } from 'zod';
import { graphql } from '#contracts';
import type { Examination } from '#tour-file';
import { request, sendFile } from '../../platform/request.js';
import { Choice, Form, LongText, Field as TypedField, useTypedForm } from '../../ui/form.js';

const examine = graphql(`
  mutation RecordExamination($itemId: ID!, $examination: AnyJson!, $supersedes: ID, $reason: String) {
    recordExamination(itemId: $itemId, examination: $examination, supersedes: $supersedes, reason: $reason) { summary { id dueOn } }
  }
`);

type Field = readonly [key: string, label: string, form?: 'date' | 'text' | 'long' | 'yes or no' | readonly string[]];

const main: readonly Field[] = [
  ['on', 'Day of the examination', 'date'],
  ['outcome', 'Outcome', ['pass', 'fail']],
  ['nextLatestOn', 'Next at the latest, as the report says', 'date'],
  ['defectBy', 'A defect could become dangerous by', 'date'],
  ['satisfies', 'Intervals it satisfies, if not all (P12M P4Y)'],
  ['underScheme', 'Under an examination scheme', 'yes or no'],
  ['examiner', 'Examiner'],
  ['report', 'Report number'],
];

/** In the order of the paragraphs of LOLER 1998 Schedule 1. */
const particulars: readonly Field[] = [
  ['employer', 'Made for (name and address)', 'long'],
  ['premises', 'Premises where it was made', 'long'],
  ['manufactured', 'Made in (year or day)'],
  ['previousOn', 'Last examination before', 'date'],
  ['workingLoadLimit', 'Working load limit, with the configuration'],
  ['firstAfterInstallation', 'First after installation or assembly at a new site', 'yes or no'],
  ['installedStatement', 'If so: the examiner’s statement on the installation', 'long'],
  ['basis', 'Made', ['', 'within 6 months', 'within 12 months', 'under a scheme', 'after exceptional circumstances']],
  ['statement', 'The examiner’s statement on operation', 'long'],
  ['dangerousParts', 'Parts with a defect that is or could become a danger', 'long'],
  ['repairsNeeded', 'Repair, renewal or alteration needed', 'long'],
  ['repairsBeforeDanger', 'Repair before a defect becomes dangerous', 'long'],
  ['tests', 'Tests made', 'long'],
  ['examinerAddress', 'Examiner’s address', 'long'],
  ['qualifications', 'Examiner’s qualifications'],
  ['employedBy', 'Examiner’s employer, or self-employed'],
  ['authenticatedBy', 'Signed or authenticated by'],
  ['reportOn', 'Day of the report', 'date'],
];

const yes = (value: unknown): string => (value === true ? 'yes' : value === false ? 'no' : '');
const textOf = (value: unknown): string =>
  Array.isArray(value) ? value.join(' ') : typeof value === 'boolean' ? yes(value) : typeof value === 'string' ? value : '';

const typedExamination = z.record(z.string(), z.string()).superRefine((typed, context) => {
  const say = (key: string, message: string) => context.addIssue({ code: 'custom', path: [key], message });
  if (!typed.on) say('on', 'the day, YYYY-MM-DD');
  if (!typed.examiner?.trim()) say('examiner', 'the name of who examined it');
  if (typed.corrects === 'yes' && !typed.reason?.trim()) say('reason', 'why the record is corrected');
  if (typed.nextLatestOn && typed.on && typed.nextLatestOn <= typed.on) say('nextLatestOn', `a day after ${typed.on}`);
});

const onFile = (examination: Examination | undefined): Record<string, string> => ({
  ...Object.fromEntries(main.map(([key]) => [key, textOf((examination as Record<string, unknown> | undefined)?.[key])])),
  ...Object.fromEntries(
    particulars.map(([key]) => [key, textOf((examination?.particulars as Record<string, unknown> | undefined)?.[key])]),
  ),
  outcome: examination?.outcome ?? 'pass',
  reason: '',
  corrects: examination ? 'yes' : '',
});

/** Records an examination with what its report says and the report itself; `of` is the record that is corrected. */
export function ExaminationForm({ itemId, of }: { itemId: string; of?: { id: string; examination: Examination } }) {
  const form = useTypedForm(typedExamination, onFile(of?.examination));
  const [file, setFile] = useState<File | null>(null);
  const client = useQueryClient();
  const record = useMutation({
    mutationFn: async (typed: Record<string, string>) => {
      const kept = file ? await sendReport(itemId, file) : undefined;
      const reportFile = kept?.id ?? of?.examination.reportFile;
      return request(examine, {
        itemId,
        examination: examinationOf(typed, reportFile),
        supersedes: of?.id ?? null,
        reason: typed.reason || null,
      });
    },
    onSuccess: async () => {
      form.reset(onFile(of?.examination));
      setFile(null);
      await client.invalidateQueries();
    },
  });
  return (
    <Form form={form} onSubmit={(typed) => record.mutate(typed)} error={record.error}>
      <div className="fields">
        {main.map(input)}
        {of && <TypedField name="reason" label="Why it is corrected" />}
      </div>
      <details>
        <summary>What else the report says</summary>
        <div className="fields">{particulars.map(input)}</div>
      </details>
      <div className="fields">
        <label>
          The report itself (PDF, JPEG or PNG)
          <input type="file" accept="application/pdf,image/jpeg,image/png" onChange={(event) => setFile(event.target.files?.[0] ?? null)} />
        </label>
      </div>
      {record.isSuccess && <p role="status">Recorded.</p>}
      <button type="submit" disabled={record.isPending}>
        {of ? 'Record the correction' : 'Record'}
      </button>
    </Form>
  );
}

const sendReport = (itemId: string, file: File): Promise<{ id: string }> =>
  sendFile(`/api/reports/${encodeURIComponent(itemId)}?name=${encodeURIComponent(file.name)}`, file, file.type) as Promise<{ id: string }>;

function input([key, label, form]: Field) {
  if (form === 'long') return <LongText key={key} name={key} label={label} />;
  if (form === undefined || form === 'text' || form === 'date')
    return <TypedField key={key} name={key} label={label} type={form ?? 'text'} />;
  const words = form === 'yes or no' ? ['', 'yes', 'no'] : form;
  return <Choice key={key} name={key} label={label} choices={words.map((each) => [each, each || 'not said'] as const)} />;
}

function examinationOf(values: Readonly<Record<string, string>>, reportFile: string | undefined): object {
  const given = (fields: readonly Field[]) =>
    Object.fromEntries(
      fields
        .map(([key, , form]) => [key, form === 'yes or no' && values[key] ? values[key] === 'yes' : values[key]] as const)
        .filter(([, value]) => value !== '' && value !== undefined),
    );
  const { satisfies, ...first } = given(main);
  const more = given(particulars);
  return {
    ...first,
    ...(typeof satisfies === 'string' ? { satisfies: satisfies.split(/[\s,]+/).filter((each) => each !== '') } : {}),
    ...(Object.keys(more).length > 0 ? { particulars: more } : {}),
    ...(reportFile === undefined ? {} : { reportFile }),
  };
}
