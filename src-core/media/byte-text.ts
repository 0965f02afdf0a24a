/** Bytes as UTF-8 text; where they are not UTF-8, as Latin-1. Stops at the first zero byte, trims white space. */
export function readText(bytes: Uint8Array): string {
  const end = bytes.indexOf(0);
  const used = end < 0 ? bytes : bytes.subarray(0, end);
  const latin = readLatin(used);
  if (!used.some((byte) => byte > 0x7f)) return latin.trim();
  try {
    const escaped = Array.from(used, (byte) => `%${byte.toString(16).padStart(2, '0')}`).join('');
    return decodeURIComponent(escaped).trim();
  } catch {
    return latin.trim();
  }
}

/** Each byte one letter; in pieces, since a function takes only so many arguments. */
function readLatin(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 4096) {
    text += String.fromCharCode(...bytes.subarray(at, at + 4096));
  }
  return text;
}
