import type { Canvas } from '../canvas/canvas.ts'
import { corners, point } from '../canvas/geometry.ts'
import type { Metres, Pixels } from '../canvas/measures.ts'
import type { SetUp } from './set-up-inputs.ts'

/** The outline of a camera body around its sensor, in metres: half its width, and its extent above and below. */
const BODY = { halfWidth: 0.07, above: 0.03, below: 0.045 }
const BARREL_HALF_WIDTH: Metres = 0.036
/** The length of a lens that is drawn without a body. */
const BARREL_LENGTH: Metres = 0.06

/** Where a camera that looks straight down is drawn. */
export interface CameraPlace {
  /** Its optical axis. */
  readonly x: Pixels
  /** Converts a height above the original to a position on the canvas. */
  readonly y: (height: Metres) => Pixels
  readonly pxPerMetre: number
}

/** The extent of the drawn camera. */
export interface CameraOutline {
  /** Half its width at a height above the original. */
  readonly half: (height: Metres) => Pixels
  readonly top: Pixels
}

/** Draws as much of the camera as is known: its body with the sensor, its lens, or only the lens. */
export function drawCamera(canvas: Canvas, setUp: SetUp, { x, y, pxPerMetre }: CameraPlace): CameraOutline {
  const { sensor, lens, clear, apex } = setUp
  const px = (metres: Metres): Pixels => metres * pxPerMetre
  const barrel = Math.max(px(BARREL_HALF_WIDTH), 6)
  const body = Math.max(px(BODY.halfWidth), 11)
  const tip = clear ?? lens ?? apex
  const tipY = tip === undefined ? undefined : y(tip)
  const complete = sensor !== undefined && (tip === undefined || tip < sensor)
  const sensorY = complete ? y(sensor) : undefined
  let top = Math.min(tipY ?? y(0), sensorY ?? y(0))
  let bodyBottom = Number.POSITIVE_INFINITY
  if (sensorY !== undefined) {
    top = sensorY - Math.max(px(BODY.above), 5)
    const space = tipY === undefined ? px(sensor as Metres) : (tipY - sensorY) * 0.8
    bodyBottom = sensorY + Math.min(Math.max(px(BODY.below), 6), space)
    canvas.body('thick', 'camera', corners({ left: x - body, right: x + body, top, bottom: bodyBottom }))
    canvas.line('thin', 'sensor', point(x - body + 3, sensorY), point(x + body - 3, sensorY))
  }
  if (tipY !== undefined) {
    const barrelTop = sensorY === undefined ? tipY - Math.max(px(BARREL_LENGTH), 10) : bodyBottom
    const box = { left: x - barrel, right: x + barrel, top: barrelTop, bottom: tipY }
    canvas.body(sensorY === undefined ? 'dashed' : 'thick', 'lens', corners(box))
    if (clear !== undefined) canvas.line('thick', 'front-rim', point(x - barrel - 2, tipY), point(x + barrel + 2, tipY))
    if (sensorY === undefined) top = barrelTop
  }
  if (lens !== undefined)
    canvas.line('thin', 'principal-plane', point(x - barrel - 4, y(lens)), point(x + barrel + 4, y(lens)))
  return { half: (height) => (y(height) <= bodyBottom && sensorY !== undefined ? body : barrel + 2), top }
}
