import { useMutation } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { graphql } from '#contracts';
import { Refused, request } from './request.js';
import { newId } from './requests-over.js';

const jobQuery = graphql(`query JobState($id: ID!) { job(id: $id) { id state progress } }`);
const cancelMutation = graphql(`mutation CancelJob($id: ID!) { cancelJob(id: $id) { id state progress } }`);

export interface JobState {
  readonly id: string;
  readonly state: string;
  /** 0 to 1 */
  readonly progress: number;
}

interface JobUnderWay {
  readonly __typename: 'JobUnderWay';
  readonly job: JobState;
}

/** What is asked under a request id: asked again under the same, it is the same job and its answer. */
type Ask<Answer> = (requestId: string) => Promise<Answer>;

type Ended<Answer> = Exclude<Answer, JobUnderWay>;

/** A job is looked at this often, ms. */
const lookEveryMs = 600;

/** Looks without a connection before it is given up here; the job goes on. */
const mostTries = 60;

/** Planning that may take a while: asked for once, followed to its end, with progress; what was typed stays where it is meanwhile. */
export function usePlanning<Answer extends { readonly __typename?: string }>(then: {
  readonly onAnswer: (answer: Ended<Answer>) => void | Promise<void>;
  readonly onError?: () => void;
}) {
  const [job, setJob] = useState<JobState | null>(null);
  // Pressed twice before the button is drawn anew, it is asked for once.
  const isAsked = useRef(false);
  const mutation = useMutation({
    mutationFn: (ask: Ask<Answer>) => follow(ask, setJob),
    onSuccess: then.onAnswer,
    onError: () => then.onError?.(),
    onSettled: () => {
      isAsked.current = false;
      setJob(null);
    },
  });
  const mutate = (ask: Ask<Answer>) => {
    if (isAsked.current) return;
    isAsked.current = true;
    mutation.mutate(ask);
  };
  const cancel = () => {
    if (job) void request(cancelMutation, { id: job.id }).catch(() => undefined);
  };
  return { ...mutation, mutate, job, cancel };
}

async function follow<Answer extends { readonly __typename?: string }>(
  ask: Ask<Answer>,
  tell: (job: JobState) => void,
): Promise<Ended<Answer>> {
  const requestId = newId();
  for (;;) {
    const answer = await throughTunnels(() => ask(requestId));
    if (!isUnderWay(answer)) return answer as Ended<Answer>;
    await over(answer.job, tell);
  }
}

const isUnderWay = (answer: object): answer is JobUnderWay => (answer as { __typename?: string }).__typename === 'JobUnderWay';

async function over(first: JobState, tell: (job: JobState) => void): Promise<void> {
  for (let job = first; job.state === 'waiting' || job.state === 'running'; ) {
    tell(job);
    await pause(lookEveryMs);
    job = (await throughTunnels(() => request(jobQuery, { id: job.id }))).job;
  }
}

/** Without a connection the job goes on all the same: asked again until there is one. */
async function throughTunnels<T>(ask: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries++) {
    try {
      return await ask();
    } catch (fault) {
      if (!(fault instanceof Refused && fault.kind === 'network') || tries >= mostTries) throw fault;
      await pause(2 * lookEveryMs);
    }
  }
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
