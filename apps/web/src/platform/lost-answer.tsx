import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { settleRequest } from './request.js';

const askEveryMs = 3_000;

/** Asks what became of a write whose answer was lost, until it is known; then says it. */
export function LostAnswer({ requestId }: { requestId: string }) {
  const [outcome, setOutcome] = useState<'saved' | 'not saved' | 'unknown yet'>('unknown yet');
  const client = useQueryClient();
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let isGone = false;
    const ask = async () => {
      const now = await settleRequest(requestId);
      if (isGone) return;
      setOutcome(now);
      if (now === 'unknown yet') timer = setTimeout(() => void ask(), askEveryMs);
      else void client.invalidateQueries();
    };
    void ask();
    return () => {
      isGone = true;
      clearTimeout(timer);
    };
  }, [requestId, client]);
  if (outcome === 'saved')
    return (
      <p className="answer" role="status">
        ○ It was saved; only the answer was lost.
      </p>
    );
  if (outcome === 'not saved')
    return (
      <p role="alert">
        <b>stop</b> Nothing was saved: the connection broke before it arrived. What you typed is still here; send it again.
      </p>
    );
  return (
    <p role="status">
      <b>check</b> No answer came back. Whether it was saved is not known yet; it is being asked for. Do not type it again.
    </p>
  );
}
