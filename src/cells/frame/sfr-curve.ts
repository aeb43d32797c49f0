import { html, svg, type TemplateResult } from 'lit'
import { frameWords as words } from './words.ts'

const [WIDTH, HEIGHT] = [360, 200]
const [LEFT, BOTTOM, TOP] = [34, 28, 8]
const MOST_RESPONSE = 1.2

const across = (frequency: number): number => LEFT + (WIDTH - LEFT - 8) * frequency
const down = (response: number): number =>
  TOP + (HEIGHT - TOP - BOTTOM) * (1 - Math.min(response, MOST_RESPONSE) / MOST_RESPONSE)

const isPair = (pair: unknown): pair is [number, number] =>
  Array.isArray(pair) && pair.length === 2 && pair.every((value) => typeof value === 'number' && Number.isFinite(value))

/** The curve of an edge’s response, with marks where it has fallen to a half and a tenth. */
export function sfrCurve(reading: Readonly<Record<string, unknown>>): TemplateResult | undefined {
  const pairs = Array.isArray(reading.sfr) ? reading.sfr.filter(isPair) : []
  if (pairs.length < 2) return undefined
  const points = pairs
    .map(([frequency, response]) => `${across(frequency).toFixed(1)},${down(response).toFixed(1)}`)
    .join(' ')
  const marks = (
    [
      ['mtf50', 0.5],
      ['mtf10', 0.1],
    ] as const
  ).flatMap(([part, level]) => {
    const at = reading[part]
    return typeof at === 'number' && at <= 1 ? [[at, level] as const] : []
  })
  return html`
    <svg class="curve" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label=${words.curve}>
      ${[0, 0.5, 1].map(
        (response) => svg`
          <path class="grid" d="M${LEFT} ${down(response)}H${WIDTH - 8}"></path>
          <text x=${LEFT - 6} y=${down(response) + 4} text-anchor="end">${response}</text>
        `,
      )}
      ${[0, 0.25, 0.5, 0.75, 1].map(
        (frequency) => svg`
          <path class="grid" d="M${across(frequency)} ${TOP}V${HEIGHT - BOTTOM}"></path>
          <text x=${across(frequency)} y=${HEIGHT - BOTTOM + 14} text-anchor="middle">${frequency}</text>
        `,
      )}
      <polyline class="line" points=${points}></polyline>
      ${marks.map(
        ([frequency, level]) => svg`
          <path class="mark" d="M${across(frequency)} ${HEIGHT - BOTTOM}V${down(level)}H${LEFT}"></path>
          <circle cx=${across(frequency)} cy=${down(level)} r="3.5"></circle>
        `,
      )}
      <text x=${WIDTH - 8} y=${HEIGHT - 2} text-anchor="end">${words.frequency}</text>
    </svg>
  `
}
