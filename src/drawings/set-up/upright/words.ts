import { agree } from '../../../units/plural.ts'

/** What distances of an upright set-up are measured from: what the camera covers, where that is no original. */
export type Plane = 'original' | 'field'

/** The texts that only drawings of upright set-ups need; copy stands do not load them. */
export const UPRIGHT_WORDS = {
  leanOutOfRange: 'The lean is not drawn: it must be an angle within 75° of upright.',
  floorNeedsCentre: 'The floor is not drawn: the height of the centre of the original is unknown.',
  floorAtZero: 'The floor is not drawn: the height of the centre of the original must be above zero.',
  noColumn: 'The column is not drawn: an upright set-up has none.',
  elevationFromSide: (scale: string) => `Elevation from the side ${scale}`,
  planAlongAxis: (scale: string) => `Plan along the axis ${scale}`,
  floorLabel: 'floor',
  centreLong: 'centre above floor',
  centreShort: 'centre',
  lensAboveFloor: 'lens above floor',
  lensAndLampsLong: 'lens and lamps above floor',
  lensAndLampsShort: 'lens, lamps',
  lensLevel: (plane: Plane) => `lens to ${plane}, level`,
  outFrom: (plane: Plane, distance: string) => `${distance} out from the ${plane}`,
  leans: (degrees: number, back: boolean) => `leans ${degrees}° ${back ? 'back' : 'forward'}`,
  aboveFloor: (distance: string) => `${distance} above the floor`,
  uprightIntroduction: (scale: string) => `Elevation from the side and plan of an upright set-up at ${scale}.`,
  uprightPlane: (plane: Plane, size: string | undefined, pose: string, centre: string | undefined) =>
    `The ${plane} ${size === undefined ? '' : `is ${size} and `}${pose}${centre === undefined ? '' : `, its centre ${centre} above the floor`}.`,
  isUpright: 'is upright',
  distancesOut: (plane: Plane, list: string, count: number) =>
    `${list} ${agree(count, 'is', 'are')} out from the ${plane}.`,
  lensPosition: (plane: Plane, height: string | undefined, level: string, axis: string) =>
    `The lens is ${height === undefined ? '' : `${height} above the floor, `}${level} horizontally from the centre of the ${plane}, ${axis}.`,
  axisLevel: 'its axis level',
  axisTilted: (degrees: number, down: boolean) => `its axis tilted ${degrees}° ${down ? 'down' : 'up'}`,
  mirrorReachOut: (distance: string, reach: string) =>
    `At ${distance} out, the mirror zone reaches ${reach} to either side of the centre line.`,
  uprightNotToSize: 'Camera, easel and lamps are placed to scale; their own sizes are schematic.',
  uprightLamp: (which: string, position: string, out: string, height: string, elevation: string, aim: string) =>
    `${which} is ${position}, ${out}${height}, at ${elevation} to its plane, ${aim}.`,
  uprightPair: (distance: string, out: string, height: string, elevation: string, aim: string) =>
    `Two lamps are ${distance} to either side of the centre line, ${out}${height}, at ${elevation} to its plane, ${aim}.`,
}
