/** One of a few ways, side by side; the chosen one is inked. */
export function Pick<Value extends string>({
  label,
  choices,
  value,
  onChange,
}: {
  readonly label: string;
  readonly choices: readonly { readonly value: Value; readonly name: string }[];
  readonly value: Value;
  readonly onChange: (value: Value) => void;
}) {
  return (
    <fieldset className="pick" aria-label={label}>
      {choices.map((choice) => (
        <button
          key={choice.value}
          type="button"
          className="btn"
          aria-pressed={choice.value === value}
          onClick={() => onChange(choice.value)}
        >
          {choice.name}
        </button>
      ))}
    </fieldset>
  );
}
