/** A typed operation of `#contracts`: text of the document with the types of its answer and variables. */
export interface Operation<Answer, Variables> {
  toString(): string;
  readonly __apiType?: (variables: Variables) => Answer;
}

export interface Fault {
  readonly field?: string;
  readonly row?: number;
  readonly column?: string;
  readonly value: unknown;
  readonly wanted: string;
}

/** What the other side said no to: a sentence, and where it knows them the faults with field, value and what would be right. */
export class Refused extends Error {
  constructor(
    sentence: string,
    readonly code: string,
    readonly faults: readonly Fault[] = [],
  ) {
    super(sentence);
  }
}

interface GraphQlAnswer<Answer> {
  data?: Answer;
  errors?: { message: string; extensions?: { code?: string; faults?: Fault[] } }[];
}

export async function request<Answer, Variables>(operation: Operation<Answer, Variables>, variables?: Variables): Promise<Answer> {
  const response = await send('/graphql', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ query: operation.toString(), variables }),
  });
  const answer = (await response.json().catch(() => ({}))) as GraphQlAnswer<Answer>;
  const error = answer.errors?.[0];
  if (error) throw new Refused(error.message, error.extensions?.code ?? '', error.extensions?.faults);
  if (!answer.data) throw new Refused(`The server answered ${response.status}. Nothing was saved.`, String(response.status));
  return answer.data;
}

/** A file to or from the plain routes. */
export async function sendFile(path: string, body: Blob | string, type: string): Promise<unknown> {
  const response = await send(path, { method: 'POST', headers: { 'content-type': type, 'x-cartwright': '1' }, body });
  const answer = (await response.json().catch(() => ({}))) as { message?: string; faults?: Fault[] };
  if (!response.ok) throw new Refused(answer.message ?? `The server answered ${response.status}.`, String(response.status), answer.faults);
  return answer;
}

async function send(path: string, init: RequestInit): Promise<Response> {
  try {
    return await fetch(path, { ...init, credentials: 'same-origin' });
  } catch {
    throw new Refused('No connection. What you see is the last that was read; what you typed is kept here.', 'OFFLINE');
  }
}
