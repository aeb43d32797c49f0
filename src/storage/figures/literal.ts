import type { Type, Value } from '../../language/index.ts'
import { type Dimension, type Notation, STOP } from '../../units/index.ts'

const SYMBOLS = ['m', 'kg', 's', 'A', 'K', 'mol', 'cd', 'rad', 'stop', 'px', 'bit']

/** A way of writing a number as a cell declares it for its unit. */
export const WAYS: Readonly<Record<Notation, string>> = { 'f-number': 'f/', ratio: '1:', shutter: '1/ s' }

/** The coherent unit of a dimension, in brackets where it has several parts; undefined for fractional powers. */
function unitText({ exponents }: Dimension): string | undefined {
  if (!exponents.every(Number.isInteger)) return undefined
  const parts = (sign: 1 | -1): string[] =>
    exponents.flatMap((e, at) =>
      e * sign <= 0 ? [] : [e * sign === 1 ? `${SYMBOLS[at]}` : `${SYMBOLS[at]}^${e * sign}`],
    )
  const [above, below] = [parts(1), parts(-1)]
  if (below.length === 0) return above.length < 2 ? above.join('') : `[${above.join(' ')}]`
  return `[${above.join(' ') || '1'}/${below.length > 1 ? `(${below.join(' ')})` : below.join('')}]`
}

/** The one record that formulas can write out: by a function that gives its parts back. */
const WRITABLE = 'lamp'

/** A value as a formula that gives it, to the last digit; undefined where there is none. */
export function literal(value: Value, type: Type): string | undefined {
  switch (type.kind) {
    case 'number': {
      const unit = unitText(type.dimension)
      if (typeof value !== 'number' || !Number.isFinite(value) || unit === undefined) return undefined
      // A level is written in the unit of levels: a plain stop would be a difference.
      if (type.level) return type.dimension === STOP ? `${value} EV` : undefined
      return unit === '' ? `${value}` : `${value} ${unit}`
    }
    case 'yes or no':
      return value === true ? 'yes' : 'no'
    case 'text':
      return typeof value === 'string' && !/["\\\n]/.test(value) ? `"${value}"` : undefined
    case 'list': {
      const items = (value as readonly Value[]).map((item) => literal(item, type.of))
      return items.length > 0 && items.every((item) => item !== undefined) ? `{${items.join(', ')}}` : undefined
    }
    case 'record': {
      if (type.name !== WRITABLE) return undefined
      const parts = Object.entries(type.parts).map(([name, of]) => {
        const part = literal((value as Readonly<Record<string, Value>>)[name] as Value, of)
        return part === undefined ? undefined : `${name}: ${part}`
      })
      return parts.every((part) => part !== undefined) ? `${WRITABLE}(${parts.join(', ')})` : undefined
    }
  }
}
