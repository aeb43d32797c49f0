import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open, proposed } from './open.ts'

const estateMap = {
  original: '1200 x 900',
  wanted_sampling: '300',
  sensor: '53.4 x 40',
  sensor_pixels: '11656 x 8742',
  focal: '120',
  column_reach: '3200',
  lamp_out: '2920',
  lamp_height: '2720',
  lamp_aim: '600',
  illuminance: '420',
  aperture: 'f/8',
} as const

test('at its defaults it computes, with the sampling alone failing, on purpose', () => {
  const sheet = open('flat-sheet')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['sharp_enough'])
  expect(sheet.message('sharp_enough')).toContain('321 ppi of the 400 ppi required')
})

describe('an estate map, 1.2 × 0.9 m, on a 100-megapixel sensor with a 120 mm lens', () => {
  const sheet = open('flat-sheet', estateMap)
  // With 10 mm of border all round, 1220 × 920 mm go on 53.4 × 40 mm: 40/920 = 0.043478 binds, 53.4/1220 = 0.043770 does not.
  const m = 40 / 920

  test('is framed by its height', () => {
    expect(sheet.number('magnification')).toBeCloseTo(m, 12)
    expect(sheet.value('turned')).toBe(false)
    expect(sheet.mm('field_width')).toBeCloseTo(53.4 * 23, 9)
    expect(sheet.mm('field_height')).toBeCloseTo(920, 9)
  })

  test('is sampled by 11 656 pixels over 1228.2 mm', () => {
    const perInch = (11656 / 1228.2) * 25.4
    expect(sheet.number('ppi') * 0.0254).toBeCloseTo(perInch, 9)
    expect(sheet.shown('ppi').text).toBe('241 ppi')
  })

  test('takes two frames at 300 ppi: 986.9 × 740.2 mm each, lying the other way, 30 mm shared', () => {
    const long = (11656 / 300) * 25.4
    const short = (8742 / 300) * 25.4
    expect(sheet.mm('frame_short')).toBeCloseTo(short, 9)
    // Upright: (1220 − 30)/(740.2 − 30) = 1.68, two across; (920 − 30)/(986.9 − 30) = 0.93, one down. As it lies: 2 × 2.
    expect(Math.ceil((1220 - 30) / (short - 30)) * Math.ceil((920 - 30) / (long - 30))).toBe(2)
    expect(sheet.value('frames')).toBe(2)
  })

  test('has the column at f (2 + m + 1/m)', () => {
    // 120 × (2 + 0.043478 + 23) = 3005.2 mm; the lens at 120 × 24 = 2880 mm; 40 mm of barrel before its front plane.
    expect(sheet.mm('carriage')).toBeCloseTo(3005.217391, 5)
    expect(sheet.mm('lens_height')).toBeCloseTo(2880, 9)
    expect(sheet.mm('room')).toBeCloseTo(2840, 9)
    expect(sheet.mm('tube')).toBe(0)
  })

  test('is lit from below atan((2720 + 150)/2920), its mirror zone 600 + 2720 × 600/2880 from the centre', () => {
    expect((sheet.number('elevation') * 180) / Math.PI).toBeCloseTo(44.5053, 3)
    expect(sheet.mm('mirror_edge')).toBeCloseTo(1166.6667, 3)
  })

  test('spreads by what two diffuse lamps give, computed point by point', () => {
    // Intensity falls as the cosine off the axis (120° between half intensities); E = I cos θ cos i/d².
    const from = (side: number, x: number, y: number): number => {
      const [lx, lz, aim] = [side * 2920, 2720, -side * 600]
      const d = Math.hypot(x - lx, y, lz)
      const axis = Math.hypot(aim - lx, lz)
      const cosine = ((x - lx) * (aim - lx) + lz * lz) / (d * axis)
      return (cosine * (lz / d)) / d ** 2
    }
    const light: number[] = []
    for (let i = -30; i <= 30; i++)
      for (let j = -30; j <= 30; j++) light.push(from(-1, i * 20, j * 15) + from(1, i * 20, j * 15))
    const spread = Math.log2(Math.max(...light) / Math.min(...light))
    expect(sheet.number('spread')).toBeCloseTo(spread, 3)
  })

  test('is exposed for 420 lx: log2(100 × 420/250), less 2 log2(1 + m)', () => {
    const value = Math.log2((100 * 420) / 250)
    const seconds = (64 / 2 ** value) * (1 + m) ** 2
    expect(sheet.number('light_value')).toBeCloseTo(value, 9)
    expect(sheet.number('time')).toBeCloseTo(seconds, 9)
    expect(sheet.shown('time').mark).toBe('1/2.5 s')
  })

  test('holds about 2 N c (1 + m)/m² sharp, its diffraction spot 2.44 λ N (1 + m)', () => {
    const pitch = 53.4 / 11656
    // The exact depth differs from the handbook's short form by a factor 1/(1 − k²), k = N c/(m f).
    const k = (8 * 2 * pitch) / (m * 120)
    expect(sheet.mm('depth')).toBeCloseTo((2 * 8 * 2 * pitch * (1 + m)) / m ** 2 / (1 - k * k), 6)
    expect(sheet.number('diffraction')).toBeCloseTo((2.44 * 550e-6 * 8 * (1 + m)) / pitch, 9)
  })
})

test('an original typed in inches is 25.4 times as many millimetres', () => {
  const inches = open('flat-sheet', { original: '16.5 x 11.7 in' })
  // 16.5 × 25.4 + 20 = 439.1 mm over 36; 11.7 × 25.4 + 20 = 317.18 mm over 24 binds.
  expect(inches.number('magnification')).toBeCloseTo(24 / 317.18, 12)
})

test('a sheet that lies upright turns the camera and the field with it', () => {
  const upright = open('flat-sheet', { original: '297 x 420' })
  expect(upright.value('turned')).toBe(true)
  expect(upright.mm('field_width')).toBeCloseTo(317, 9)
  expect(upright.mm('field_height')).toBeCloseTo(475.5, 9)
})

test('lamps over a thick original are measured from its face', () => {
  const thick = open('flat-sheet', { original_thickness: '120', lamp_height: '970', lamp_out: '1120' })
  expect((thick.number('elevation') * 180) / Math.PI).toBeCloseTo((Math.atan((850 + 150) / 1120) * 180) / Math.PI, 9)
  expect(thick.mm('carriage')).toBeCloseTo(open('flat-sheet').mm('carriage') + 120, 9)
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['pixels_match', {}, { sensor_pixels: '4000 x 6000' }],
    ['sharp_enough', { wanted_sampling: '300' }, {}],
    ['overlap_fits', {}, { overlap: '200' }],
    ['column_reaches', {}, { focal: '90' }],
    ['lens_long_enough', {}, { focal: '35' }],
    ['read_flat', {}, { receptor: 'dome up' }],
    ['released_untouched', {}, { hands_off: 'no' }],
    ['lens_focuses', {}, { original: '36 x 24' }],
    ['room_enough', {}, { original: '22 x 18', principal_inset: '80' }],
    ['even_enough', {}, { lamp_aim: '-300' }],
    ['lamps_low', {}, { lamp_height: '1200' }],
    ['lamps_clear', {}, { lamp_out: '500' }],
    ['depth_holds', {}, { unevenness: '40' }],
    ['aperture_resolves', {}, { aperture: 'f/22' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('flat-sheet', held), open('flat-sheet', failed), check)
  })
})

test('how short a lens may be is the sheet’s to say', () => {
  expect(open('flat-sheet', { focal: '55', shortest_lens: '60' }).state('lens_long_enough')).toBe('fail')
  expect(open('flat-sheet', { focal: '45', shortest_lens: '40' }).state('lens_long_enough')).toBe('pass')
})

test('a short time may be released by hand', () => {
  const bright = open('flat-sheet', { hands_off: 'no', illuminance: '20000' })
  expect(bright.number('time')).toBeLessThan(1 / 60)
  expect(bright.state('released_untouched')).toBe('pass')
})

test('what a failing check proposes makes it hold', () => {
  const deep = { unevenness: '40' }
  const stopped = proposed(open('flat-sheet', deep).message('depth_holds'), /which takes (f\/[\d.]+)/)
  expect(open('flat-sheet', { ...deep, aperture: stopped }).failing).not.toContain('depth_holds')

  const high = { original: '700 x 500' }
  const lens = proposed(open('flat-sheet', high).message('column_reaches'), /A lens of (\d+ mm)/)
  expect(open('flat-sheet', { ...high, focal: lens }).failing).not.toContain('column_reaches')
})

test('too large an overlap is reported by its check; the frames are counted all the same', () => {
  const sheet = open('flat-sheet', { overlap: '300' })
  expect(sheet.problems).toEqual([])
  expect(sheet.message('overlap_fits')).toContain('254 mm on their short side')
})

test('a lens that would touch the original is reported by its check, not by an error', () => {
  const sheet = open('flat-sheet', { original: '30 x 20', border: '0', principal_inset: '200' })
  expect(sheet.problems).toEqual([])
  expect(sheet.mm('room')).toBeCloseTo(60 * (1 + 1 / 1.2) - 200, 9)
  expect(sheet.failing).toContain('room_enough')
})

test('a sheet without gloss does not mind lamps in the mirror zone', () => {
  const sheet = open('flat-sheet', { glossy: 'no', lamp_out: '500' })
  expect(sheet.state('lamps_clear')).toBe('pass')
  expect(sheet.message('lamps_clear')).toBe('no lamp is reflected in the original.')
})
