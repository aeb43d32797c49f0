import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open, proposed } from './open.ts'

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('best-aperture')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

describe('a ledger page of 300 mm that measures 330 mm over the curve', () => {
  const sheet = open('best-aperture', {
    page_width: '300',
    page_arc: '330',
    unevenness: '2',
    wanted_sampling: '300',
    sensor: '53.4 x 40',
    sensor_pixels: '11656 x 8742',
    focal: '120',
    magnification: '1:8',
    aperture: 'f/8',
  })
  const m = 1 / 8
  const pitch = 53.4 / 11656
  const c = 2 * pitch

  test('is as high as the arc of a circle: sin φ/φ = 300/330, depth = 150 tan(φ/2), and its waves', () => {
    // Halving the interval on φ until sin φ/φ falls to 0.90909.
    let [low, high] = [0.1, 1.5]
    for (let i = 0; i < 60; i++) {
      const half = (low + high) / 2
      if (Math.sin(half) / half > 300 / 330) low = half
      else high = half
    }
    expect(sheet.mm('wanted_depth')).toBeCloseTo(150 * Math.tan(low / 2) + 2, 6)
  })

  test('has the depth of both sides of the plane in focus added up', () => {
    // From the entrance pupil at f (1/m + 1) = 1080 mm: in front u k/(1 + k), behind u k/(1 − k), k = N c/(m f).
    const k = (8 * c) / (m * 120)
    expect(sheet.mm('depth')).toBeCloseTo((1080 * k) / (1 + k) + (1080 * k) / (1 - k), 9)
  })

  test('asks for the first mark whose depth holds the one wanted', () => {
    const depthAt = (aperture: number): number => {
      const k = (aperture * c) / (m * 120)
      return (2 * 1080 * k) / (1 - k * k)
    }
    const marked = sheet.number('needed_aperture')
    expect((6 * Math.log2(marked)) % 1).toBeCloseTo(0, 9)
    expect(depthAt(marked)).toBeGreaterThanOrEqual(sheet.mm('wanted_depth'))
    expect(depthAt(marked / 2 ** (1 / 6))).toBeLessThan(sheet.mm('wanted_depth'))
    expect(sheet.state('wanted_depth_holds')).toBe('fail')
  })

  test('is sharpest at both ends where defocus and diffraction, squared and summed, are least', () => {
    // Defocus spot at the ends: m D m/(2 N (1 + m)) in the short form; diffraction 2.44 λ N (1 + m).
    const blur = (aperture: number): number => {
      const working = aperture * (1 + m)
      return Math.hypot((sheet.mm('wanted_depth') / 2) * (m ** 2 / working), 2.44 * 550e-6 * working)
    }
    const best = sheet.number('best')
    expect(blur(best)).toBeLessThan(blur(best * 1.01))
    expect(blur(best)).toBeLessThan(blur(best / 1.01))
  })

  test('has a diffraction spot of 2.44 × 0.00055 × 9 mm', () => {
    expect(sheet.number('working')).toBeCloseTo(9, 12)
    expect(sheet.mm('spot')).toBeCloseTo(0.012078, 9)
    expect(sheet.number('spot_pixels')).toBeCloseTo(0.012078 / pitch, 9)
  })

  test('leaves of 150 line pairs an inch, eight times finer at the sensor, what a perfect lens leaves', () => {
    const frequency = (150 / 25.4) * 8
    const v = frequency * 550e-6 * 9
    expect(sheet.number('finest') / 1000).toBeCloseTo(frequency, 9)
    expect(sheet.number('contrast')).toBeCloseTo((2 / Math.PI) * (Math.acos(v) - v * Math.sqrt(1 - v * v)), 9)
  })

  test('is sampled at 11 656 px over 427.2 mm', () => {
    expect(sheet.number('ppi') * 0.0254).toBeCloseTo((11656 / 427.2) * 25.4, 9)
  })

  test('takes steps that overlap by a fifth', () => {
    const [depth, held] = [sheet.mm('wanted_depth'), sheet.mm('depth')]
    expect(sheet.value('steps')).toBe(1 + Math.ceil((depth - held) / (held * 0.8)))
  })
})

test('a flat page needs the depth of its waves alone', () => {
  const flat = open('best-aperture', { page_width: '400', page_arc: '400', unevenness: '3' })
  expect(flat.problems).toEqual([])
  expect(flat.mm('wanted_depth')).toBeCloseTo(3, 9)
})

test('an arc shorter than its chord is reported where it is worked out', () => {
  expect(open('best-aperture', { page_arc: '198' }).problems[0]).toMatch(/^bulge: .*swapped/)
})

test('the aperture proposed holds the depth', () => {
  const deep = { page_arc: '212' }
  const mark = proposed(open('best-aperture', deep).message('wanted_depth_holds'), /which takes (f\/[\d.]+)/)
  expect(open('best-aperture', { ...deep, aperture: mark }).failing).not.toContain('depth_holds')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['pixels_match', {}, { sensor_pixels: '4000 x 6000' }],
    ['wanted_depth_holds', {}, { page_arc: '210' }],
    ['still_resolves', {}, { aperture: 'f/22' }],
    ['sampled', {}, { magnification: '1:12' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('best-aperture', held), open('best-aperture', failed), check)
  })
})
