/** What was noted on paper meanwhile is entered late, and stays marked as that. */
export function FromPaper({ paper, onPaper }: { paper: string | null; onPaper: (paper: string | null) => void }) {
  return (
    <>
      <p className="row">
        <button type="button" className="plain" aria-pressed={paper !== null} onClick={() => onPaper(paper === null ? '' : null)}>
          {paper === null ? 'Enter it late, from paper' : 'Not from paper'}
        </button>
      </p>
      {paper !== null && (
        <label>
          What the paper says: when, and by whom
          <input value={paper} maxLength={120} onChange={(event) => onPaper(event.target.value)} />
        </label>
      )}
    </>
  );
}
