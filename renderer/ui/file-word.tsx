/** A file of this machine that is taken at once; the same one may be chosen again. */
export function FileWord({
  word,
  accept,
  onTake,
}: {
  readonly word: string;
  /** Endings and types, as HTML's `accept` has them. */
  readonly accept: string;
  readonly onTake: (file: File) => void;
}) {
  return (
    <label className="file-word">
      {word}{' '}
      <input
        type="file"
        accept={accept}
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          if (file) onTake(file);
          target.value = '';
        }}
      />
    </label>
  );
}
