import { describe, expect, it } from 'vitest'
import { calledIn, compare } from '../../src/functions/published/compare.ts'
import { PUBLISHED, SOURCES } from '../../src/functions/published/data.ts'

/** Half a unit of the last printed digit, or half of the printed fraction's part: `4 1/2` is known to a quarter. */
function printedRounding(printed: string): number | undefined {
  const decimal = /^[-−]?\d*(?:(\.)(\d*))?(?:[Ee]([+-]?\d+))?$/.exec(printed.replaceAll(' ', '_'))
  if (decimal) return 0.5 * 10 ** (Number(decimal[3] ?? 0) - (decimal[2]?.length ?? 0))
  const fraction = /^(?:\d+ )?\d+\/(\d+)$/.exec(printed)
  return fraction ? 0.5 / Number(fraction[1]) : undefined
}

describe.each([...new Set(PUBLISHED.map(({ source }) => source))])('%s', (source) => {
  const values = PUBLISHED.filter((value) => value.source === source)
  it.each(
    values.map(
      (value) => [`${value.id}${value.quoted ? ' (read in a quotation)' : ''}: ${value.quantity}`, value] as const,
    ),
  )('%s', (_title, value) => {
    const { ours, agrees } = compare(value)
    expect(agrees, `${value.formula} gives ${ours}, printed ${value.printed} ${value.unit ?? ''}`).toBe(true)
  })
})

describe('the table of published values', () => {
  it('holds 450 values or more from 70 sources or more', () => {
    expect(PUBLISHED.length).toBeGreaterThanOrEqual(450)
    expect(new Set(PUBLISHED.map(({ source }) => source)).size).toBeGreaterThanOrEqual(70)
  })

  it('describes every source, and uses every source it describes', () => {
    expect(Object.keys(SOURCES).sort()).toEqual([...new Set(PUBLISHED.map(({ source }) => source))].sort())
  })

  it('gives every value a name of its own', () => {
    const ids = PUBLISHED.map(({ id }) => id)
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([])
  })

  it('allows no more than the printed digits do, or says why', () => {
    const loose = PUBLISHED.filter(({ printed, tolerance, note }) => {
      const rounding = printedRounding(printed)
      // A double holds 16 digits; some sources print as many.
      return note === undefined && tolerance !== undefined && rounding !== undefined && tolerance > 1.0001 * rounding
    })
    expect(
      loose
        .filter(({ value, tolerance }) => (tolerance as number) > 1e-15 * Math.abs(value as number))
        .map(({ id }) => id),
    ).toEqual([])
  })

  it('would notice: a value off by three of its tolerances disagrees', () => {
    for (const value of PUBLISHED.slice(0, 50))
      if (typeof value.value === 'number')
        expect(compare({ ...value, value: value.value + 3 * (value.tolerance as number) }).agrees, value.id).toBe(false)
  })

  it('checks functions or units only: a formula that calls none names a unit', () => {
    for (const value of PUBLISHED) if (calledIn(value).length === 0) expect(value.formula, value.id).toMatch(/[a-zµ′%]/)
  })
})
