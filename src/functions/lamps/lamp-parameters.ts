import { list, number, Refusal, record } from '../../language/index.ts'
import { ANGLE, LENGTH, LUMINOUS_INTENSITY } from '../../units/index.ts'
import { parameter } from '../maths/parameters.ts'
import type { LampNumbers } from './light-field.ts'

/** A lamp as a value of the language. */
export const LAMP = record('lamp', {
  x: number(LENGTH),
  y: number(LENGTH),
  z: number(LENGTH),
  aim_x: number(LENGTH),
  aim_y: number(LENGTH),
  intensity: number(LUMINOUS_INTENSITY),
  beam_angle: number(ANGLE),
})

export const LAMPS = parameter('lamps', list(LAMP), 'lamps, in braces: {left, right}')
export const BEAM = { above: 0, below: Math.PI }

/** At least one lamp, and light somewhere in the field. */
export function needLamps(lamps: readonly LampNumbers[]): void {
  if (lamps.length === 0) throw new Refusal('“lamps” is empty. List at least one lamp, as in {left, right}.', 'lamps')
}
