import type { CheckState } from '../../cells/shared/check-sign.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'

const box = element('rect', { x: 1, y: 1, width: 16, height: 16 })
const full = { fill: 'currentColor', stroke: 'none' }

const SHAPES: Readonly<Record<CheckState, readonly Node[]>> = {
  pass: [element('rect', { x: 1, y: 1, width: 16, height: 16, fill: 'currentColor' })],
  marginal: [box, element('path', { ...full, d: 'M1 1V17H17Z' })],
  fail: [box, element('path', { d: 'M4.5 4.5 13.5 13.5M13.5 4.5 4.5 13.5' })],
  waiting: [element('rect', { x: 1, y: 1, width: 16, height: 16, 'stroke-dasharray': '3.2 2.13' })],
  error: [box, element('path', { d: 'M4.5 9H13.5' })],
}

/** The small square of a check, as in the app: filled, half, crossed, dashed, or barred. */
export const checkShape = (state: CheckState): Node =>
  element(
    'svg',
    {
      class: 'sign',
      viewBox: '0 0 18 18',
      width: 14,
      height: 14,
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': 2,
      'aria-hidden': 'true',
    },
    ...SHAPES[state],
  )
