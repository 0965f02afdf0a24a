/** The sign of the program: a flag on its post, and the line that leads to it. */
export function Mark() {
  return (
    <svg viewBox="0 0 24 30" className="mark" aria-hidden="true">
      <path d="M4 28.5V3" className="post" />
      <path d="M4 3H21L16.5 8.5L21 14H4Z" className="cloth" />
      <path d="M4 28.5C12 28.5 8 20 14 20S18 26 22 25" className="line" />
    </svg>
  );
}
