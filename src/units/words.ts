import * as D from './dimension.ts'

/** The sentences about typed quantities and units, as users meet them. */

export const tooLong = (most: number): string => `This is longer than the ${most} characters a quantity may have.`
export const sizeExpected = 'A size is width × height, such as 420 × 297.'
export const sidesDiffer = (width: string, height: string): string => `The width is ${width}, the height ${height}.`
export const oneDecimalSign = 'A number has one decimal sign; write thousands without a comma or point.'
export const dividedByZero = 'A fraction cannot be divided by zero.'
export const numberTooLarge = 'This number is too large to compute with.'
export const spaceInNumber = 'A space inside a number: is it one number, or is a unit missing?'
export const zeroMissing = 'Write a zero before the decimal sign.'
export const notANumber = (text: string): string => `“${text}” is not a number.`
export const nothingFilledIn = 'Nothing is filled in here.'
export const longDash = 'A long dash is not a minus sign; type “-”.'
export const writePlusMinus = 'Limits are written with “±”.'
export const limitsMissing = 'The limits after “±” are missing. Type how much more or less it may be, such as “± 2 mm”.'
export const leftAfterLimits = (text: string): string =>
  `There is “${text}” after the limits. Remove it, or put it before “±”.`
export const celsiusPercent = 'The limits of a temperature in °C cannot be in per cent. Give them in K.'
export const ratioLimits = 'Give the limits of a ratio in per cent.'
export const limitsDiffer = (limits: string, value: string): string =>
  `The limits are ${limits}, the value is ${value}.`
export const limitsOutOfRange =
  'The limits are below zero or too large. Type how much more or less it may be, such as “± 2 mm”.'
export const doesNotAdd = (right: string, left: string): string => `“${right}” cannot be added to “${left}”.`
export const temperatureDifference = 'What is added to a temperature or subtracted from it is a difference, in K.'
export const largerFirst =
  'Two quantities without a sign between them: write the larger unit first, or put a + between them.'
export const largerThanLife = 'larger than life size'
/** The mark on a ring or dial that is nearest to an exact figure. */
export const nearestMark = (mark: string): string => `nearest mark ${mark}`
/** For a figure shown as the nearest mark. */
export const exactFigure = (exactly: string): string => `nearest mark; exactly ${exactly}`
export const shutterTime = 'a shutter time'
export const notFinite = 'This is not a finite number.'
export const wrongKind = (found: string, expected: string, unit: string): string =>
  `This is ${found}; the field takes ${expected}${unit ? ` in ${unit}` : ''}.`
/** Follows a sentence on a name that is not known; nothing where no name is like it. */
export const didYouMean = (near: string | undefined): string => (near ? ` Did you mean “${near}”?` : '')
export const unknownUnit = (unit: string, near: string | undefined): string =>
  `“${unit}” is not a known unit.${didYouMean(near)}`
export const notPartOfUnit = (text: string): string => `“${text}” is not part of a unit.`
export const unitTooLong = (most: number): string => `This is longer than the ${most} characters a unit may have.`
export const unitMissing = 'A unit is missing here.'
export const oneSlash = 'A unit has at most one “/”; put what is below it in parentheses.'
export const startsWithSlash = 'A unit cannot start with “/”; write “1/…”.'
export const parenthesesAfterSlash = 'Parentheses in a unit are only possible right after “/”.'
export const closesNothing = 'This “)” has no “(” before it.'
export const joinsTwoUnits = (sign: string): string => `“${sign}” joins two units; one of them is missing.`
export const powerAfterUnit = (power: string): string => `The power “${power}” must follow a unit directly.`
export const numberInUnit = 'A unit has no number in it except a “1/” at its start.'
export const parenthesesBelow = 'Put everything below “/” in parentheses.'
export const wholePower = 'A unit takes a whole-number power from 1 to 12, or −1 to −12.'
export const neverClosed = 'This “(” is never closed.'
export const celsiusAlone = '°C is a temperature on its own; for differences use K.'
export const unitTooLarge = 'This unit is too large or too small to compute with.'

/** The names of dimensions: in sentences, and in the JSON of the terminal. */
export const DIMENSION_NAMES: ReadonlyMap<D.Dimension, string> = new Map([
  [D.NONE, 'dimensionless'],
  [D.LENGTH, 'length'],
  [D.AREA, 'area'],
  [D.VOLUME, 'volume'],
  [D.MASS, 'mass'],
  [D.TIME, 'time'],
  [D.FREQUENCY, 'frequency'],
  [D.VELOCITY, 'velocity'],
  [D.ACCELERATION, 'acceleration'],
  [D.FORCE, 'force'],
  [D.ENERGY, 'energy'],
  [D.POWER, 'power'],
  [D.IRRADIANCE, 'irradiance'],
  [D.HEAT_TRANSFER, 'heat transfer'],
  [D.PRESSURE, 'pressure'],
  [D.CURRENT, 'current'],
  [D.VOLTAGE, 'voltage'],
  [D.RESISTANCE, 'resistance'],
  [D.CHARGE, 'charge'],
  [D.TEMPERATURE, 'temperature'],
  [D.AMOUNT, 'amount of substance'],
  [D.ANGLE, 'angle'],
  [D.SOLID_ANGLE, 'solid angle'],
  [D.LUMINOUS_INTENSITY, 'luminous intensity'],
  [D.LUMINOUS_FLUX, 'luminous flux'],
  [D.ILLUMINANCE, 'illuminance'],
  [D.LUMINANCE, 'luminance'],
  [D.LIGHT_DOSE, 'light dose'],
  [D.STOP, 'stops'],
  [D.PIXEL, 'pixels'],
  [D.SAMPLING, 'sampling'],
  [D.PIXEL_PITCH, 'pixel pitch'],
  [D.RECIPROCAL_LENGTH, 'reciprocal length'],
  [D.RECIPROCAL_TEMPERATURE, 'reciprocal temperature'],
  [D.DATA, 'data'],
  [D.DATA_RATE, 'data rate'],
])

export const quantity = 'quantity'
export const aPlainNumber = 'a plain number'
export const aNumberOfStops = 'a number of stops'
export const aNumberOfPixels = 'a number of pixels'
export const anAmountOfData = 'an amount of data'
/** A noun with its article: `a length`, `an illuminance`. */
export const withArticle = (noun: string): string => `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`
