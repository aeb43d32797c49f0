import { agree } from '../../units/plural.ts'
import { INPUTS } from '../canvas/words.ts'

/** The texts in and below a drawing of the set-up. */
export const SET_UP_WORDS = {
  // Omissions.
  originalWidth: INPUTS.originalWidth,
  originalHeight: INPUTS.originalHeight,
  fieldWidth: 'The width of the field',
  fieldHeight: 'The height of the field',
  camera: 'The camera',
  lensDistance: 'The distance from lens to original',
  clearDistance: 'The clear distance',
  column: 'The column',
  entranceRays: 'The rays from the entrance pupil',
  thickness: 'The thickness',
  mirrorZone: 'The mirror zone',
  notALength: (what: string) => `${what} is not drawn: its value is not a length.`,
  lengthTooSmall: (what: string, shown: string) => `${what} is not drawn: ${shown} is not above zero.`,
  lengthTooLarge: (what: string, most: string) => `${what} is not drawn: it must be at most ${most}.`,
  originalNeedsWidth: 'The original is not drawn: its width is unknown.',
  originalNeedsHeight: 'The original is not drawn in the plan: its height is unknown.',
  fieldNeedsWidth: 'The field is not drawn: its width is unknown.',
  fieldNeedsHeight: 'The field is not drawn in the plan: its height is unknown.',
  raysNeedLens: 'The rays to the edges of the field are not drawn: the distance of the lens is unknown.',
  lensAboveSensor: (tip: string, sensor: string) =>
    `The camera is drawn incomplete: its lens ends ${tip} above the original, but the sensor is at ${sensor}.`,
  sides: (width: string, height: string) => `${width} × ${height}`,
  fitsTurned: (original: string, field: string) =>
    `The original, ${original}, lies within the field, ${field}, only when turned: turn the camera or the original, or swap the sides.`,
  largerThanField: (original: string, field: string) =>
    `The original, ${original}, is larger than the field, ${field}: its edges are not in the frame.`,
  bodyNeedsSensor: 'The camera body is not drawn: the distance from original to sensor is unknown.',
  lampTooFar: (which: string, most: string) =>
    `${which} is not drawn: its position or aim is unknown or more than ${most} away.`,
  lampTooLow: (which: string, below: string | undefined) =>
    `${which} is not drawn: it is ${below === undefined ? 'not above' : `${below} below`} the original.`,
  mirrorNeedsLamp: 'The mirror zone is not drawn: there is no lamp to give its height.',
  mirrorNeedsWidth: 'The mirror zone is not drawn: the width of the original is unknown.',
  nothingKnown: 'no size or distance of the set-up is known.',

  // Labels in the drawing.
  elevation: (scale: string) => `Elevation ${scale}`,
  plan: (scale: string) => `Plan ${scale}`,
  originalLabel: 'original',
  fieldLabel: 'field',
  mirrorLabel: 'mirror zone',
  sensorLong: 'original to sensor',
  sensorShort: 'sensor',
  columnLabel: 'column',
  columnAtSensor: 'column, sensor',
  clearLong: 'clear distance',
  clearShort: 'clear',
  lensLong: 'lens to original',
  lensShort: 'lens',
  lampLong: 'lamp above original',
  lampShort: 'lamp',
  // Positions, shared by the description and the drag handles.
  onCentreLine: 'on the centre line',
  besideCentreLine: (distance: string, right: boolean) => `${distance} ${right ? 'right' : 'left'} of the centre line`,
  aboveOriginal: (distance: string) => `${distance} above the original`,
  levelWithMiddle: 'level with the middle',
  fromMiddle: (distance: string, above: boolean) => `${distance} ${above ? 'above' : 'below'} the middle`,
  inPlan: (position: string) => `${position} in plan`,

  // The description.
  lampName: INPUTS.lampName,
  introduction: (scale: string) => `Elevation and plan of the set-up at ${scale}.`,
  originalSize: (size: string) => `The original is ${size}.`,
  wide: (width: string) => `${width} wide`,
  fieldSize: (size: string) => `The camera covers a field of ${size}.`,
  sensorHeight: (distance: string) => `the sensor ${distance}`,
  lensHeight: (distance: string) => `the lens (its front principal plane) ${distance}`,
  rimHeight: (distance: string) => `the front rim of the lens ${distance}`,
  heights: (list: string, count: number) => `${list} ${agree(count, 'is', 'are')} above the original.`,
  columnHeight: (distance: string) => `The mark on the column is ${distance} above the board.`,
  mirrorReach: (height: string, reach: string, clearance: string) =>
    `At ${height} the mirror zone reaches ${reach} to either side of the centre line${clearance}.`,
  clearsZone: (distance: string, lamps: number) =>
    `; ${agree(lamps, 'the centre of the lamp clears', 'the centres of the lamps clear')} it by ${distance}`,
  lampInZone: '; the lamp is in it',
  lampsInZone: '; the lamps are in it',
  someLampsInZone: (numbers: string, count: number) =>
    `; ${agree(count, 'lamp', 'lamps')} ${numbers} ${agree(count, 'is', 'are')} in it`,
  notToSize: 'Camera, column, board and lamps are placed to scale; their own sizes are schematic.',
  aimedAtCentre: 'aimed at the centre',
  aimAcross: (distance: string, right: boolean) => `${distance} to the ${right ? 'right' : 'left'}`,
  aimUp: (distance: string, up: boolean) => `${distance} towards the ${up ? 'upper' : 'lower'} edge`,
  aimed: (offsets: string, alongHeight: boolean) => `aimed ${offsets} ${alongHeight ? 'from' : 'of'} the centre`,
  eachAimed: (distance: string, past: boolean) => `each aimed ${distance} ${past ? 'past' : 'short of'} the centre`,
  beam: (degrees: string) => `, beam ${degrees}°`,
  lamp: (which: string, position: string, height: string, elevation: string, aim: string) =>
    `${which} is ${position}, ${height} above the original, ${elevation} up seen from its centre, ${aim}.`,
  pair: (distance: string, height: string, elevation: string, aim: string) =>
    `Two lamps are ${distance} to either side of the centre line and ${height} above the original, ${elevation} up seen from its centre, ${aim}.`,
}
