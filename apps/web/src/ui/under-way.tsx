import type { JobState } from '../platform/planning.js';

/** How far a job is, and the way out of it. */
export function UnderWay({ job, onCancel, of }: { job: JobState | null; onCancel: () => void; of: string }) {
  if (!job) return <p role="status">{of} ...</p>;
  const isWaiting = job.state === 'waiting';
  return (
    <p role="status">
      <progress max={1} value={isWaiting || job.progress === 0 ? undefined : job.progress} aria-label={of} />{' '}
      {isWaiting ? `${of}: waits for its turn` : `${of}${job.progress > 0 ? `: ${Math.round(job.progress * 100)} %` : ' ...'}`}{' '}
      <button type="button" className="plain" onClick={onCancel}>
        Cancel
      </button>
    </p>
  );
}
