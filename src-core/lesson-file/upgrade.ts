/** Turns a file's content of one version into the next one's. It may trust the older version's shape. */
export type UpgradeStep = (content: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;

/**
 * Takes content from its own version to the newest, one step after the other; `steps[n]` leads from version n to
 * n + 1 and need not set `version`, which is done here. Null where a step is missing.
 */
export function upgradeContent(
  content: Readonly<Record<string, unknown>>,
  newest: number,
  steps: Readonly<Record<number, UpgradeStep>>,
): Readonly<Record<string, unknown>> | null {
  let upgraded = content;
  for (let version = Number(content.version); version < newest; version += 1) {
    const step = steps[version];
    if (!step) return null;
    upgraded = { ...step(upgraded), version: version + 1 };
  }
  return upgraded;
}
