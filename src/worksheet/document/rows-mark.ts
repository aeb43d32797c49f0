/** A short hash of a text, FNV-1a of 32 bits to base 36: to know again what is not to be stored. */
export function textMark(text: string): string {
  let hash = 0x811c9dc5
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193)
  return (hash >>> 0).toString(36)
}

/** A short hash of a table's rows, to recognise that they are still those of an example. */
export const rowsMark = (rows: readonly (readonly string[])[]): string => textMark(JSON.stringify(rows))
