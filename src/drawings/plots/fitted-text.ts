import { textWidth } from '../canvas/lettering.ts'

/** A text cut to a width, with a sign that it is cut. */
export function fittedText(text: string, width: number): string {
  const plain = text.replace(/\s+/g, ' ').trim()
  if (textWidth(plain) <= width) return plain
  const signs = [...plain]
  while (signs.length > 0 && textWidth(`${signs.join('').trimEnd()}…`) > width) signs.pop()
  return `${signs.join('').trimEnd()}…`
}

/** A text in rows of a width at most: broken between words, the last row cut where it is still too long. */
export function rowsOfText(text: string, width: number, most: number): readonly string[] {
  const rows: string[] = []
  const words = text.replace(/\s+/g, ' ').trim().split(' ')
  for (let at = 0; at < words.length; ) {
    if (rows.length === most - 1) {
      rows.push(fittedText(words.slice(at).join(' '), width))
      break
    }
    let row = words[at++] as string
    while (at < words.length && textWidth(`${row} ${words[at]}`) <= width) row += ` ${words[at++]}`
    rows.push(fittedText(row, width))
  }
  return rows
}
