/** A short hash of a table's rows, to recognise that they are still those of an example. */
export function rowsMark(rows: readonly (readonly string[])[]): string {
  const text = JSON.stringify(rows)
  let hash = 0x811c9dc5
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193)
  return (hash >>> 0).toString(36)
}
