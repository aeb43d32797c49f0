import { describe, expect, it } from 'vitest'
import { choosePiece } from '../../../src/worksheet/document/kit-given.ts'
import { KIT_SORTS } from '../../../src/worksheet/format/kit-sorts.ts'
import type { Given } from '../../../src/worksheet/index.ts'
import { given, result, seen, sheetOf } from '../make.ts'

const lens = (piece: Record<string, string>, more: Partial<Given> = {}): Given =>
  given('lens', 'A macro lens', { entry: 'kit', sort: 'lens', piece, ...more })

describe('a given that is a piece of kit', () => {
  it('is a record of the figures known of it, read with a dot', () => {
    const sheet = sheetOf([
      lens({ focal: '60', lens_greatest: '1:1', widest: '2.8', pupil_ratio: '1.1' }),
      result('extension', 'lens.focal * 1:4', { unit: 'mm' }),
      result('greatest', 'lens.lens_greatest', { unit: '1:' }),
      result('widest', 'lens.widest'),
    ])
    expect(['extension', 'greatest', 'widest'].map((name) => seen(sheet, name))).toEqual(['15 mm', '1:1', 'f/2.8'])
  })

  it('has sizes and lists too', () => {
    const sheet = sheetOf([
      given('camera', 'A camera', {
        entry: 'kit',
        sort: 'camera',
        piece: { sensor: '36 x 24', sensor_pixels: '6000 x 4000' },
      }),
      given('lamp', 'A flash', { entry: 'kit', sort: 'lamp', piece: { power_steps: '0; -1; -2' } }),
      result('pitch', 'camera.sensor.width / camera.sensor_pixels.width', { unit: 'µm/px' }),
      result('least', 'lamp.power_steps'),
    ])
    expect([seen(sheet, 'pitch'), seen(sheet, 'least')]).toEqual(['6 µm/px', '{0 stop, −1 stop, −2 stop}'])
  })

  it('a lamp’s candela comes from one reading where it is not known: E d²', () => {
    const lamp = (piece: Record<string, string>) =>
      seen(
        sheetOf([
          given('lamp', 'One', { entry: 'kit', sort: 'lamp', piece }),
          result('intensity', 'lamp.intensity', { unit: 'cd' }),
        ]),
        'intensity',
      )
    expect(lamp({ reading: '500', reading_distance: '1.5' })).toBe('1125 cd')
    expect(lamp({ intensity: '900', reading: '500', reading_distance: '1.5' })).toBe('900 cd')
    expect(lamp({ reading: '500' })).toContain('error')
  })

  it('says which figure is missing, and which cannot be read', () => {
    const missing = sheetOf([lens({ focal: '60' }), result('p', 'lens.pupil_ratio')])
    expect(seen(missing, 'p')).toContain('pupil_ratio')
    const bad = sheetOf([lens({ focal: 'sixty' }), result('x', 'lens.focal')])
    expect(seen(bad, 'lens')).toContain('The focal of this lens cannot be read')
  })

  it('waits while none is chosen', () => {
    const sheet = sheetOf([given('lens', '', { entry: 'kit', sort: 'lens' }), result('x', 'lens.focal')])
    expect(seen(sheet, 'x')).toBe('waits for lens')
  })

  it('chosen, it fills in the givens that go with it, in one step of undo', () => {
    const sheet = sheetOf([
      given('lens', '', {
        entry: 'kit',
        sort: 'lens',
        fills: { focal: 'focal', lens_greatest: 'greatest', nearest: 'nearest' },
      }),
      given('focal', '50', { unit: 'mm' }),
      given('greatest', '1:4', { unit: '1:' }),
      given('nearest', '30', { unit: 'cm' }),
    ])
    const piece = { name: 'A macro lens', figures: { focal: '60', lens_greatest: '1:1', nearest: '219' } }
    sheet.apply(choosePiece(sheet.cells, sheet.cell('lens') as Given, piece))
    expect(['focal', 'greatest', 'nearest'].map((name) => seen(sheet, name))).toEqual(['60 mm', '1:1', '21.9 cm'])
    sheet.undo()
    expect(['focal', 'greatest', 'nearest'].map((name) => seen(sheet, name))).toEqual(['50 mm', '1:4', '30 cm'])
    expect(sheet.canUndo).toBe(false)
  })

  it('a polluted piece is only what it says it is', () => {
    const piece = JSON.parse('{"__proto__": {"focal": "60"}, "constructor": "1", "focal": "55"}')
    const sheet = sheetOf([lens(piece), result('x', 'lens.focal')])
    expect(seen(sheet, 'x')).toBe('55 mm')
    expect(({} as Record<string, unknown>).focal).toBeUndefined()
  })
})

describe('a name without a piece', () => {
  it('is an error that says what to do, for every sort', () => {
    for (const sort of KIT_SORTS) {
      const sheet = sheetOf([given('piece', '83.25', { entry: 'kit', sort }), result('x', 'piece.focal')])
      expect(seen(sheet, 'piece')).toContain(`“83.25” is the name of a ${sort} without its figures. Choose a ${sort}`)
    }
  })
})
