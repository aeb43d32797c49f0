import { describe, expect, it } from 'vitest'
import type { KitPiece } from '../../../src/worksheet/advice/kit-suggestions.ts'
import { suggestionsFor, suggestionsToward } from '../../../src/worksheet/advice/suggestions.ts'
import type { Given } from '../../../src/worksheet/index.ts'
import { check, given, result, seen, sheetOf } from '../make.ts'

const lens = (focal: number): KitPiece => ({
  sort: 'lens',
  name: `${focal} mm lens`,
  figures: { focal: `${focal} mm` },
})
const KIT: readonly KitPiece[] = [
  lens(35),
  lens(60),
  lens(90),
  lens(200),
  { sort: 'tube', name: 'A tube', figures: { length: '12 mm' } },
  { sort: 'lens', name: 'A lens nothing is known of', figures: {} },
]

const sheet = (chosen: string, more: Partial<Given> = {}) =>
  sheetOf([
    given('lens', chosen, {
      entry: 'kit',
      sort: 'lens',
      piece: { focal: '60 mm' },
      fills: { focal: 'focal' },
      ...more,
    }),
    given('focal', '60', { unit: 'mm' }),
    given('magnification', '1:9', { unit: '1:', fixed: true }),
    result('distance', 'focal * (1 + 1 / magnification)', { unit: 'mm' }),
    check('reaches', 'distance >= 800 mm'),
  ])

const shown = (pieces: readonly KitPiece[], chosen = '60 mm lens', more: Partial<Given> = {}): string[] =>
  suggestionsFor(sheet(chosen, more), 'reaches', pieces).mends.map((one) => `${one.given} ${one.shown}`)

describe('mends by the kit', () => {
  it('offer the pieces that would do, in the place of figures no piece has', () => {
    expect(shown(KIT)).toEqual(['lens 90 mm lens', 'lens 200 mm lens'])
  })

  it('applied, make the check hold, in one step of undo', () => {
    const one = sheet('60 mm lens')
    const before = one.worksheet
    for (const { change } of suggestionsFor(one, 'reaches', KIT).mends) {
      one.apply(change)
      expect(one.check('reaches').state).not.toBe('fail')
      one.undo()
      expect(one.worksheet).toEqual(before)
    }
  })

  it('without a kit, or while no piece is chosen, the figures themselves are offered', () => {
    expect(shown([])).toEqual(['focal 80 mm'])
    expect(shown(KIT, '')).toContain('focal 80 mm')
  })

  it('leave out what stays as it is', () => {
    expect(shown(KIT, '60 mm lens', { fixed: true })).toEqual([])
  })

  it('reach formulas that read the piece itself', () => {
    const direct = sheetOf([
      given('lens', '60 mm lens', { entry: 'kit', sort: 'lens', piece: { focal: '60 mm' } }),
      check('long', 'lens.focal > 100 mm'),
    ])
    expect(suggestionsFor(direct, 'long', KIT).mends.map(({ shown }) => shown)).toEqual(['200 mm lens'])
  })

  it('from a result: the piece that comes to what it should be', () => {
    const { mends } = suggestionsToward(sheet('60 mm lens'), 'distance', '900 mm', KIT)
    expect(mends.map(({ shown, gives }) => [shown, gives])).toContainEqual(['90 mm lens', '900 mm'])
    expect(mends.map(({ shown }) => shown)).not.toContain('200 mm lens')
  })

  it('the sheet itself is left as it is', () => {
    const one = sheet('60 mm lens')
    suggestionsFor(one, 'reaches', KIT)
    expect(seen(one, 'distance')).toBe('600 mm')
    expect(one.canUndo).toBe(false)
  })
})
