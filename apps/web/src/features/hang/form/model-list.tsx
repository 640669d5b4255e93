/** Pieces of steel in their order, each removed by its button, one more by the list. */
export function ModelList({
  label,
  models,
  names,
  onChange,
}: {
  label: string;
  models: readonly string[];
  names: readonly string[];
  onChange: (models: string[]) => void;
}) {
  return (
    <div className="modellist">
      <label>
        {label}
        <select value="" onChange={(event) => onChange([...models, event.target.value])}>
          <option value="">{models.length === 0 ? 'none; add one' : 'add one'}</option>
          {names.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </label>
      {models.map((model, index) => (
        <button
          key={index}
          type="button"
          className="plain small"
          aria-label={`Take out ${model}`}
          onClick={() => onChange(models.filter((_, at) => at !== index))}
        >
          {model} ×
        </button>
      ))}
    </div>
  );
}
