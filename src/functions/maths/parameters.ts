import { list, number, type Parameter, type ParameterType, type Range } from '../../language/index.ts'
import { LENGTH, NONE, TIME } from '../../units/index.ts'

/** Types the trade writes in its own way. */
export const RATIO = number(NONE, 'ratio')
export const F_NUMBER = number(NONE, 'f-number')
export const SHUTTER = number(TIME, 'shutter')
export const PLAIN = number(NONE)
export const A_LENGTH = number(LENGTH)
export const PLAIN_NUMBERS = list(PLAIN)

export const POSITIVE: Range = { above: 0 }
export const NOT_NEGATIVE: Range = { least: 0 }
/** A share or a transmittance: nothing to all. */
export const SHARE: Range = { least: 0, most: 1 }
/** Stops of either sign; beyond a hundred no light in nature reaches. */
export const STOPS: Range = { least: -100, most: 100 }
/** A whole count of at least one thing. */
export const COUNT: Range = { least: 1, whole: true }

/** One parameter in one line: name, type, what it is, and what else there is to say of it. */
export const parameter = (
  name: string,
  type: ParameterType,
  about: string,
  more: Omit<Parameter, 'name' | 'type' | 'about'> = {},
): Parameter => ({ name, type, about, ...more })

/** A length above zero. */
export const positiveLength = (name: string, about: string, more: Omit<Parameter, 'name' | 'type' | 'about'> = {}) =>
  parameter(name, A_LENGTH, about, { range: POSITIVE, ...more })

/** A length of zero or more. */
export const length = (name: string, about: string, more: Omit<Parameter, 'name' | 'type' | 'about'> = {}) =>
  parameter(name, A_LENGTH, about, { range: NOT_NEGATIVE, ...more })

/** A length of either sign: a coordinate or an offset. */
export const coordinate = (name: string, about: string, more: Omit<Parameter, 'name' | 'type' | 'about'> = {}) =>
  parameter(name, A_LENGTH, about, more)
