/** Edit distance in which swapping two neighbouring letters counts once, as a slip of the fingers does. */
function distance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)]
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      let best = Math.min(
        at(rows, i - 1, j) + 1,
        (row[j - 1] as number) + 1,
        at(rows, i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1),
      )
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, at(rows, i - 2, j - 2) + 1)
      row.push(best)
    }
    rows.push(row)
  }
  return at(rows, a.length, b.length)
}

const at = (rows: readonly (readonly number[])[], i: number, j: number): number => (rows[i] as number[])[j] as number

/** The known word nearest to a misspelt one, the first of several equally near, or undefined where none is near enough to be meant. */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  if (word.length > 64) return undefined
  const candidates = [...known]
  const allowed = word.length <= 2 ? 1 : word.length <= 5 ? 2 : 3
  let best: string | undefined
  let least = allowed + 1
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) >= least) continue
    const away = distance(word, candidate)
    if (away < least && away < Math.max(word.length, candidate.length)) {
      least = away
      best = candidate
    }
  }
  return best ?? inOtherCase(word, candidates)
}

/** The known word that differs only in capital and small letters. */
export function inOtherCase(word: string, known: Iterable<string>): string | undefined {
  const folded = word.toLowerCase()
  for (const candidate of known) if (candidate.toLowerCase() === folded) return candidate
  return undefined
}
