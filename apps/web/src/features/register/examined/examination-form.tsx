import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { graphql } from '#contracts';
import type { Examination, ExaminationRule } from '#tour-file';
import type { RecordField } from '#trade';
import { english } from '#words';
import { Refused, request, sendFile } from '../../../platform/request.js';
import { Choice, Field, Form, LongText, useTypedForm } from '../../../ui/form.js';
import { DefectList, typedDefects } from './defect-list.js';
import {
  type Asked,
  type TypedDefect,
  type TypedExamination,
  always,
  askedOf,
  faultsOf,
  formOf,
  recordOf,
  typedExamination,
  typedOf,
} from './examination-fields.js';

const examine = graphql(`
  mutation RecordExamination($itemId: ID!, $examination: AnyJson!, $supersedes: ID, $reason: String) {
    recordExamination(itemId: $itemId, examination: $examination, supersedes: $supersedes, reason: $reason) { summary { id dueOn } }
  }
`);

const rulesQuery = graphql(`query ExaminationRulesOnFile { rules }`);

interface OfRecord {
  readonly id: string;
  readonly examination: Examination;
}

/** Records an examination with what its report says and the report itself; `of` is the record that is corrected. Only what is asked for stands open. */
export function ExaminationForm({ itemId, kind, of }: { itemId: string; kind: string; of?: OfRecord }) {
  const rules = useQuery({ queryKey: ['examination-rules'], queryFn: () => request(rulesQuery) });
  const onFile = (rules.data?.rules as { examinationRules: ExaminationRule[] } | undefined)?.examinationRules;
  if (!onFile) return <p className="quiet">Reading what the rules ask for ...</p>;
  return <RecordForm itemId={itemId} kind={kind} of={of} rules={onFile} />;
}

interface RecordFormProps {
  readonly itemId: string;
  readonly kind: string;
  readonly of: OfRecord | undefined;
  readonly rules: readonly ExaminationRule[];
}

function RecordForm({ itemId, kind, of, rules }: RecordFormProps) {
  const form = useTypedForm(typedExamination, typedOf(of?.examination));
  const [file, setFile] = useState<File | null>(null);
  const [defects, setDefects] = useState<readonly TypedDefect[] | null>(typedDefects(of?.examination.particulars?.defects));
  const asked = askedOf(rules, kind, form.watch('satisfies') ?? '', form.watch('check') ?? '');
  const client = useQueryClient();
  const record = useMutation({
    mutationFn: (typed: TypedExamination) => send({ itemId, of, asked, typed, defects, file }),
    onSuccess: async () => {
      form.reset(typedOf(of?.examination));
      setFile(null);
      setDefects(null);
      await client.invalidateQueries();
    },
  });
  return (
    <Form form={form} onSubmit={(typed) => record.mutate(typed)} error={record.error}>
      <AskedBy asked={asked} />
      <div className="fields">
        <Field name="on" label="Day of the examination" type="date" />
        <Choice name="check" label="What was made" choices={whatWasMade} />
        <Choice name="outcome" label="Outcome" choices={passOrFail} />
        {of && <Field name="reason" label="Why it is corrected" />}
        <Lines asked={asked} areAsked defects={defects} onDefects={setDefects} />
        <label>
          {english.recordField('reportFile')} (PDF, JPEG or PNG, at most 20 MB)
          <input type="file" accept="application/pdf,image/jpeg,image/png" onChange={(event) => setFile(event.target.files?.[0] ?? null)} />
        </label>
      </div>
      <details>
        <summary>What else the report says</summary>
        <div className="fields">
          <Field name="defectBy" label="The first day on which a defect could become a danger" type="date" />
          <Field name="satisfies" label="Intervals it satisfies, if not all (12 months, 4 years)" />
          <Choice name="underScheme" label="Under an examination scheme" choices={yesOrNo} />
          <Field name="answers" label="Incidents that it answers (their days)" />
          <Lines asked={asked} areAsked={false} defects={defects} onDefects={setDefects} />
        </div>
      </details>
      {record.isSuccess && <p role="status">Recorded.</p>}
      <button type="submit" disabled={record.isPending}>
        {of ? 'Record the correction' : 'Record'}
      </button>
    </Form>
  );
}

/** A record of one says nothing of another: an electrical check renews no examination. */
const whatWasMade = [
  ['', english.check.examination],
  ['electrical', english.check.electrical],
  ['pre-use', english.check['pre-use']],
] as const;
const passOrFail = [
  ['pass', 'pass'],
  ['fail', 'fail'],
] as const;
const yesOrNo = [
  ['', 'not said'],
  ['yes', 'yes'],
  ['no', 'no'],
] as const;

interface LinesProps {
  readonly asked: Asked;
  readonly areAsked: boolean;
  readonly defects: readonly TypedDefect[] | null;
  readonly onDefects: (defects: readonly TypedDefect[] | null) => void;
}

/** The fields that are asked for, or all others. */
function Lines({ asked, areAsked, defects, onDefects }: LinesProps) {
  const first = new Set<RecordField>([...always, ...asked.fields.map((each) => each.field)]);
  const fields = (Object.keys(formOf) as RecordField[]).filter((each) => first.has(each) === areAsked && formOf[each] !== 'file');
  return fields.map((field) =>
    formOf[field] === 'defects' ? (
      <DefectList key={field} defects={defects} onChange={onDefects} />
    ) : (
      <Line key={field} field={field} asked={asked} />
    ),
  );
}

function AskedBy({ asked }: { asked: Asked }) {
  const sources = [...new Set(asked.fields.map((each) => each.source))];
  if (sources.length === 0) return <p className="quiet">No rule on file asks for more than examiner and report.</p>;
  const isAllRead = asked.fields.every((each) => each.wasRead);
  return (
    <p className="quiet">
      Asked for by {sources.join('; ')}.{isAllRead ? '' : ' What is marked “compare” is asked for from memory: compare it with the text.'}
    </p>
  );
}

function Line({ field, asked }: { field: RecordField; asked: Asked }) {
  const by = asked.fields.find((each) => each.field === field);
  const description = by && `${by.paragraph === null ? 'asked for' : `paragraph ${by.paragraph}`}${by.wasRead ? '' : ', compare'}`;
  const given = { name: field, label: english.recordField(field), description };
  const form = formOf[field];
  if (field === 'capacity' && asked.may.length > 0)
    return <Choice {...given} choices={[['', 'not said'], ...asked.may.map((each) => [each, each] as const)]} />;
  if (form === 'long') return <LongText {...given} />;
  if (form === 'yes or no') return <Choice {...given} choices={yesOrNo} />;
  if (typeof form === 'object') return <Choice {...given} choices={form.map((each) => [each, each || 'not said'] as const)} />;
  return <Field {...given} type={form === 'date' ? 'date' : 'text'} />;
}

interface ToSend {
  readonly itemId: string;
  readonly of: OfRecord | undefined;
  readonly asked: Asked;
  readonly typed: TypedExamination;
  readonly defects: readonly TypedDefect[] | null;
  readonly file: File | null;
}

/** Looked at here before anything is sent: a report whose record is refused would be kept alone. */
async function send({ itemId, of, asked, typed, defects, file }: ToSend): Promise<unknown> {
  const reason = typed.reason?.trim() ?? '';
  const recordWith = (reportFile: string | undefined) => recordOf(typed, defects, reportFile, of?.examination);
  const faults = [
    ...faultsOf(recordWith(of?.examination.reportFile), asked, file !== null),
    ...(of && reason === '' ? [{ field: 'reason', value: '', wanted: 'why the record is corrected' }] : []),
  ];
  if (faults.length > 0) throw new Refused('Nothing was recorded.', 'bad input', { faults });
  const kept = file ? await sendReport(itemId, file) : undefined;
  return request(examine, {
    itemId,
    examination: recordWith(kept?.id ?? of?.examination.reportFile),
    supersedes: of?.id ?? null,
    reason: reason || null,
  });
}

const sendReport = (itemId: string, file: File): Promise<{ id: string }> =>
  sendFile(`/api/reports/${encodeURIComponent(itemId)}?name=${encodeURIComponent(file.name)}`, file, file.type) as Promise<{ id: string }>;
