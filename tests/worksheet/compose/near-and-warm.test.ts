import { describe, expect, test } from 'vitest'
import type { Filled as Given } from '../../../src/worksheet/compose/sections.ts'
import { Filled } from '../../templates/open.ts'
import { composed, READ, set } from './sets.ts'

const opened = (parts: string, texts: Readonly<Record<string, string>>): Filled =>
  new Filled(
    composed(
      set(...parts.split(' ')),
      new Map([
        ...READ,
        ...Object.entries(texts).map(([name, value]): [string, Given] => [name, { value, from: 'typed' }]),
      ]),
    ),
  )

describe('a lens close to a small original', () => {
  const near = {
    original: '36 x 24',
    border: '0',
    focal: '60',
    lens_greatest: '1:1',
    principal_inset: '70',
    barrel_radius: '35',
    lamp_out: '200',
    lamp_height: '200',
    lamp_aim: '0',
    lamp_radius: '0',
    original_thickness: '0',
  }
  const parts = 'sheet camera one-frame lens-alone column pair barrel-clear'

  test('at 1:1, 120 mm less 70 mm is left: a lamp 200 mm out and up passes by 1.5 mm', () => {
    const sheet = opened(parts, near)
    expect(sheet.number('magnification')).toBeCloseTo(1, 12)
    // By similar triangles from the far edge, 18 mm past the axis: 218 mm · 50/200 − 18 mm − 35 mm.
    expect(sheet.mm('barrel_clearance')).toBeCloseTo(1.5, 9)
    expect(sheet.mm('barrel_shaded')).toBe(0)
    expect(sheet.state('barrel_clear')).toBe('pass')
  })

  test('the same lamp higher is shaded, and passes again at the height the sheet gives', () => {
    const high = opened(parts, { ...near, lamp_height: '300' })
    expect(high.state('barrel_clear')).toBe('fail')
    // The ray by the rim, 35 mm out and 50 mm up, meets the board 35 − 50 · 165/250 = 2 mm past the axis.
    expect(high.mm('barrel_shaded')).toBeCloseTo(20, 9)
    expect(high.message('barrel_clear')).toContain('205 mm')
    expect(opened(parts, { ...near, lamp_height: '205' }).state('barrel_clear')).toBe('pass')
  })

  test('far from the original nothing is in the way', () => {
    expect(opened(parts, { ...near, original: '420 x 297', lamp_out: '1120' }).state('barrel_clear')).toBe('pass')
  })
})

describe('heat', () => {
  test('2000 lx of filament lamps, 20 lm/W, bring dark paper 9 K above the room', () => {
    const sheet = opened('sheet lux heat', {
      illuminance: '2000',
      minutes: '12',
      lamp_efficacy: '20',
      heat_absorbed: '90',
    })
    expect(sheet.number('heat_irradiance')).toBeCloseTo(100, 9)
    // 90 W/m² over 10 W/(m² K); after 12 minutes and a time constant of 10 s all of it.
    expect(sheet.number('heat_rise')).toBeCloseTo(9, 6)
    expect(sheet.number('heat_energy')).toBeCloseTo(90 * 720, 6)
    expect(sheet.state('heat_low')).toBe('fail')
    expect(opened('sheet lux heat', { illuminance: '2000', minutes: '12' }).state('heat_low')).toBe('pass')
  })

  test('film on a panel is lit by π times the panel’s luminance', () => {
    const sheet = opened('film heat', { panel_luminance: '1000', lamp_efficacy: '300', minutes: '10' })
    expect(sheet.number('heat_irradiance')).toBeCloseTo((1000 * Math.PI) / 300, 9)
  })
})

describe('plates and strips by their own size', () => {
  test('fill the frame by their own size, and a strip moves on by a picture and its gap', () => {
    const sheet = opened('plates camera one-frame', {
      original: '56 x 40',
      border: '1',
      strip_frames: '4',
      strip_gap: '3',
      strips: '5',
      panel: '200 x 150',
    })
    // 58 × 42 mm on 36 × 24 mm: the width allows 0.6207, the height 0.5714.
    expect(sheet.number('magnification')).toBeCloseTo(24 / 42, 9)
    expect(sheet.mm('strip_step')).toBeCloseTo(59, 9)
    expect(sheet.mm('strip_length')).toBeCloseTo(4 * 56 + 3 * 3, 9)
    expect(sheet.number('strip_pictures')).toBe(20)
    expect(sheet.state('strip_lies')).toBe('fail')
    expect(sheet.message('strip_lies')).toContain('233 mm')
    expect(opened('plates', { original: '118 x 82' }).state('strip_lies')).toBe('pass')
  })
})
