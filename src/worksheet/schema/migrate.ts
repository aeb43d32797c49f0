/** Makes a document of one version into one of the next. Pure: the document it is given stays as it was. */
export type Step = (document: Readonly<Record<string, unknown>>) => Record<string, unknown>

/** `STEPS[0]` makes version 1 into version 2, and so on. Append only: a document may come from any version. */
export const STEPS: readonly Step[] = []

/** Brings a document up to the version the steps lead to. What is no version of ours is left for the schema to name. */
export function migrate(
  document: Readonly<Record<string, unknown>>,
  steps: readonly Step[] = STEPS,
): Readonly<Record<string, unknown>> {
  const { version } = document
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) return document
  return steps.slice(version - 1).reduce((older, step, at) => ({ ...step(older), version: version + at + 1 }), document)
}
