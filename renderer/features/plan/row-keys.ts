/**
 * One key a row, by its code, so that a row that moves keeps its focus. While a code is typed that another row has
 * already, the later row's key is told apart: rows of one key would not go away when the code is put right.
 */
export function listRowKeys(codes: readonly string[]): readonly string[] {
  return codes.map((code, at) => {
    const before = codes.slice(0, at).filter((other) => other === code).length;
    return before === 0 ? code : `${code} ${before}`;
  });
}
