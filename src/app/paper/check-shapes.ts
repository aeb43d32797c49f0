import { type CheckState, SIGNS } from '../../cells/shared/check-sign.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'

/** The sign of a check's state, the same as on the screen. */
export const checkShape = (state: CheckState): Node =>
  element(
    'svg',
    { class: 'sign', viewBox: '0 0 16 16', width: 14, height: 14, fill: 'currentColor', 'aria-hidden': 'true' },
    ...SIGNS[state].map(({ d, line }) =>
      line
        ? element('path', { d, fill: 'none', stroke: 'currentColor', 'stroke-width': line })
        : element('path', { d, 'fill-rule': 'evenodd' }),
    ),
  )
