import type { Compared } from './setting.ts'
import type { StandStep, StepDrawing } from './stand-steps.ts'
import { standWords as words } from './words.ts'

/** The inputs of drawings that are heights of the camera. */
const CAMERA_HEIGHTS: ReadonlySet<string> = new Set([
  'original_to_sensor',
  'lens_to_original',
  'clear_distance',
  'column_height',
  'entrance_distance',
])

const UPRIGHT = /(^|\s)(over|under)$/

/** What to do about the difference between a figure and its target, in one sentence; empty where there is none. */
export function adviceText(
  { more, difference, targetText, measuredText }: Compared,
  { reading }: StandStep,
  drawing: StepDrawing | undefined,
): string {
  if (difference === '') return ''
  if (more === undefined) return words.onTarget
  return words.orUse(action(), measuredText)

  function action(): string {
    const said = reading?.kind === 'given' ? (more ? reading.advice?.less : reading.advice?.more) : undefined
    if (said) return said.replaceAll('{}', targetText)
    const by = difference.split(',')[0]?.replace(UPRIGHT, '') ?? difference
    if (drawing?.emphasis !== undefined && CAMERA_HEIGHTS.has(drawing.emphasis) && UPRIGHT.test(difference))
      return more ? words.lowerCamera(by) : words.raiseCamera(by)
    return words.correctTo(targetText)
  }
}
