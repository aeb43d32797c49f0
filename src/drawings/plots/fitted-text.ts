import { textWidth } from '../canvas/lettering.ts'

/** A text shortened to a width in pixels, ending in an ellipsis if anything is missing. */
export function fittedText(text: string, width: number): string {
  const plain = text.replace(/\s+/g, ' ').trim()
  if (textWidth(plain) <= width) return plain
  const characters = [...plain]
  while (characters.length > 0 && textWidth(`${characters.join('').trimEnd()}…`) > width) characters.pop()
  return `${characters.join('').trimEnd()}…`
}

/** A text broken between words into at most `most` rows of a width; the last row is shortened if necessary. */
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
