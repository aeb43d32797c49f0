import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open } from './open.ts'

test('at its defaults it computes, and every check holds', () => {
  const sheet = open('getting-closer')
  expectSettled(sheet)
  expect(sheet.failing).toEqual([])
})

describe('a seal of 22 × 18 mm with a 60 mm lens that focuses to 1:2', () => {
  const sheet = open('getting-closer', {
    original: '22 x 18',
    focal: '60',
    lens_greatest: '1:2',
    tubes: '10, 16, 21',
    aperture: 'f/5.6',
    powers: '4',
    both_tube: '16',
    both_power: '4',
  })
  // 26 × 22 mm with the border; 24/22 binds, 36/26 does not.
  const m = 24 / 22

  test('comes out larger than life', () => {
    expect(sheet.number('magnification')).toBeCloseTo(m, 12)
    expect(sheet.value('needs_help')).toBe(true)
  })

  test('needs m f of extension at infinity: 65.45 mm', () => {
    expect(sheet.mm('extension')).toBeCloseTo((24 / 22) * 60, 9)
  })

  test('takes 16 and 21 mm: 37 mm reaches 0.5 + 37/60 = 1.117, while 31 mm reaches 1.017 alone', () => {
    // All eight sums: 0, 10, 16, 21, 26, 31, 37, 47. Wanted 1.0909 − 0.5 = 0.5909 × 60 = 35.45 mm or more, 65.45 or less.
    expect(sheet.value('tubes_taken')).toEqual([0.016, 0.021])
    expect(sheet.mm('tube_length')).toBeCloseTo(37, 9)
    // What the tube leaves the lens to do: 1.0909 − 0.6167 = 0.4742, that is 1:2.11.
    expect(sheet.number('tube_focus')).toBeCloseTo(m - 37 / 60, 9)
    expect(sheet.shown('tube_focus').text).toBe('1:2.11')
  })

  test('costs 2 log2(1 + m) = 2.13 stops and works at 5.6 (1 + m)', () => {
    expect(sheet.number('tube_shift')).toBeCloseTo(2 * Math.log2(46 / 22), 9)
    expect(sheet.number('tube_aperture')).toBeCloseTo(5.6 * (46 / 22), 9)
    expect(sheet.shown('tube_aperture').mark).toBe('f/11')
  })

  test('leaves f (1 + 1/m) less the barrel: 115 − 25 = 90 mm', () => {
    expect(sheet.mm('tube_room')).toBeCloseTo(60 * (1 + 22 / 24) - 25, 9)
  })

  test('has 4 dpt bring 60/250 = 0.24 at infinity, and 0.81 at its closest', () => {
    // The added lens of 250 mm collimates. Set to 1:2, the lens images what lies 180 mm before its principal plane, 155 mm
    // before the added lens at its rim: that is the image of an original at 1/(1/250 + 1/155) mm, 155/u as large.
    const u = 1 / (1 / 250 + 1 / 155)
    expect(open('getting-closer', { original: '150 x 100', focal: '60', powers: '4' }).mm('closeup_room')).toBeCloseTo(
      250,
      9,
    )
    expect(sheet.number('closeup_least')).toBeCloseTo(0.24, 9)
    expect(sheet.number('closeup_greatest')).toBeCloseTo(0.5 * (155 / u), 9)
  })

  test('has 16 mm of tube and 4 dpt together cover 0.544 to 1.114, the lens set to 1:2.10', () => {
    const tube = 16 / 60
    // As above, the lens standing out by M in all: it images what lies 60 (1 + 1/M) − 25 mm before the added lens.
    const together = (M: number): { m: number; u: number } => {
      const s = 60 * (1 + 1 / M) - 25
      const u = 1 / (1 / 250 + 1 / s)
      return { m: (M * s) / u, u }
    }
    const least = together(tube).m
    const greatest = together(tube + 0.5).m
    expect(sheet.number('both_least')).toBeCloseTo(least, 9)
    expect(sheet.number('both_greatest')).toBeCloseTo(greatest, 9)
    const set = sheet.number('both_focus')
    expect(together(tube + set).m).toBeCloseTo(m, 9)
    expect(sheet.mm('both_room')).toBeCloseTo(together(tube + set).u, 9)
    expect(sheet.mm('both_carriage')).toBeCloseTo(together(tube + set).u + 25 + 60 * (1 + tube + set), 9)
    expect(sheet.number('both_shift')).toBeCloseTo(2 * Math.log2(1 + tube + set), 9)
    expect(sheet.state('both_cover')).toBe('pass')
  })
})

test('two close-up lenses together give the sum of their powers less a little for the gap', () => {
  // Ray by ray, thin lenses: P = P1 + P2 − d P1 P2 = 2 + 10 − 0.008 × 20 = 11.84 dpt;
  // the front focus lies (1 − d P2)/P = 0.92/11.84 = 77.70 mm before the first.
  const sheet = open('getting-closer')
  expect((sheet.value('stack') as { front_focus: number }).front_focus).toBeCloseTo(0.92 / 11.84, 9)
  expect(sheet.number('closeup_least')).toBeCloseTo(0.055 * 11.84, 9)
  // Wanted 24/34: the lens is set to (m − f P)/(1 + f P), and only that costs light.
  // It then images what lies 55 (1 + 1/m0) − 25 mm before the stack's last lens: ray by ray, from there forward.
  const set = sheet.number('closeup_focus')
  const virtual = 55 * (1 + 1 / set) - 25
  const between = 1 / (1 / 100 + 1 / virtual) - 8
  const room = 1 / (1 / 500 + 1 / between)
  expect(set * (virtual / (between + 8)) * (between / room)).toBeCloseTo(24 / 34, 2)
  expect(sheet.mm('closeup_room')).toBeCloseTo(room, 1)
  expect(sheet.mm('closeup_carriage')).toBeCloseTo(sheet.mm('closeup_room') + 8 + 25 + 55 * (1 + set), 9)
  expect(sheet.number('closeup_shift')).toBeCloseTo(2 * Math.log2(1 + set), 9)
  expect(sheet.number('stops_saved')).toBeCloseTo(2 * Math.log2(1 + 24 / 34) - 2 * Math.log2(1 + set), 9)
})

test('a slide copied at life size by tubes alone has twice the focal length on each side', () => {
  const sheet = open('getting-closer', { original: '36 x 24', border: '0', tubes: '12, 20, 36', focal: '55' })
  expect(sheet.number('magnification')).toBeCloseTo(1, 12)
  expect(sheet.mm('extension')).toBeCloseTo(55, 9)
  expect(sheet.mm('tube_sensor')).toBeCloseTo(220, 9)
  expect(sheet.number('tube_shift')).toBeCloseTo(2, 9)
})

test('what the lens reaches alone takes no tube and leaves the lens at its own mark', () => {
  const sheet = open('getting-closer', { original: '420 x 297' })
  expect(sheet.value('needs_help')).toBe(false)
  expect(sheet.value('tubes_taken')).toEqual([])
  expect(sheet.number('tube_focus')).toBeCloseTo(sheet.number('magnification'), 12)
  expect(sheet.state('tubes_reach')).toBe('pass')
})

describe('the column', () => {
  test('with tubes, is at f (2 + m + 1/m), the thickness and the carriage’s mark added', () => {
    const sheet = open('getting-closer', { original_thickness: '6', sensor_to_carriage: '40' })
    expect(sheet.mm('tube_carriage')).toBeCloseTo(55 * (2 + 24 / 34 + 34 / 24) + 46, 9)
  })

  test('with a close-up lens alone and the lens at infinity, at 1/P, the barrel and f', () => {
    const sheet = open('getting-closer', { original: '71 x 47', focal: '60', powers: '8', sensor: '36 x 24' })
    // 24/51 = 0.4706 is less than f P = 0.48: the lens stays at infinity.
    expect(sheet.number('closeup_focus')).toBe(0)
    expect(sheet.mm('closeup_carriage')).toBeCloseTo(125 + 25 + 60, 9)
  })
})

describe('depth', () => {
  test('is about 2 N c (1 + m)/m² with tubes: 0.66 mm at f/8 and 1:1.42', () => {
    const sheet = open('getting-closer')
    const m = 24 / 34
    const k = (8 * 0.012) / (m * 55)
    expect(sheet.mm('depth')).toBeCloseTo((2 * 8 * 0.012 * (1 + m)) / m ** 2 / (1 - k * k), 9)
  })

  test('goes by the aperture at work, not by the way of getting there', () => {
    // At one aperture at work and one magnification, 2 N c/m² is the same, but for a term below a part in a thousand.
    const sheet = open('getting-closer')
    const perStop = (depth: string, aperture: string): number => sheet.mm(depth) / sheet.number(aperture)
    expect(perStop('closeup_depth', 'closeup_aperture') / perStop('depth', 'tube_aperture')).toBeCloseTo(1, 3)
  })

  test('is reported in frames', () => {
    const deep = open('getting-closer', { unevenness: '2' })
    // Steps of 0.8 of 0.657 mm: 1 + (2 − 0.657)/0.526 = 3.6, so four.
    expect(deep.message('depth_holds')).toContain('take 4 frames focused in steps')
  })
})

test('three close-up lenses grow stronger towards the camera, all of them', () => {
  expect(open('getting-closer', { closer_by: 'both', powers: '1, 2, 4' }).state('stack_order')).toBe('pass')
  expect(open('getting-closer', { closer_by: 'both', powers: '2, 1, 4' }).state('stack_order')).toBe('fail')
  expect(open('getting-closer', { closer_by: 'both', powers: '4' }).state('stack_order')).toBe('pass')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['pixels_match', {}, { sensor_pixels: '4000 x 6000' }],
    ['tubes_reach', {}, { tubes: '5' }],
    ['tubes_clear', {}, { focal: '28', principal_inset: '50' }],
    ['closeup_covers', { closer_by: 'close-up lens' }, { closer_by: 'close-up lens', powers: '3' }],
    ['stack_order', { closer_by: 'close-up lens' }, { closer_by: 'close-up lens', powers: '10, 2' }],
    ['lens_long_enough', {}, { focal: '45' }],
    ['depth_holds', {}, { unevenness: '2' }],
    ['both_cover', { closer_by: 'both' }, { closer_by: 'both', both_power: '1' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('getting-closer', held), open('getting-closer', failed), check)
  })
})

test('tubes that are not needed are not said to cover a range', () => {
  const sheet = open('getting-closer', { original: '400 x 300', closer_by: 'tubes' })
  expect(sheet.value('needs_help')).toBe(false)
  expect(sheet.message('tubes_reach')).toBe('tubes are not used.')
  expect(open('getting-closer').message('tubes_reach')).toBe('the tubes reach this magnification.')
})

describe('the entrance pupil, from which perspective and glare are computed', () => {
  const PUPIL = 0.8
  /** Where a ray that meets the middle of the pupil, having passed thin lenses, crosses the axis: metres behind the first lens. */
  function apparent(lenses: readonly { readonly at: number; readonly power: number }[], pupil: number): number {
    let [height, slope, at] = [0, 1, pupil]
    for (const lens of [...lenses].reverse()) {
      height -= slope * (at - lens.at)
      slope += height * lens.power
      at = lens.at
    }
    return at - height / slope
  }

  test.each([
    ['one close-up lens', 'close-up lens', '4', [{ at: 0, power: 4 }], 0.02],
    [
      'two of them, 8 mm apart',
      'close-up lens',
      '2, 5',
      [
        { at: 0, power: 2 },
        { at: 0.008, power: 5 },
      ],
      0.028,
    ],
    ['tube and close-up lens', 'both', '4', [{ at: 0, power: 3 }], 0.02],
  ])('with %s is where a ray traced through it seems to come from', (_, closer_by, powers, lenses, front) => {
    const own = { focal: '60', lens_greatest: '1:3', original: '60 x 40', principal_inset: '20', both_power: '3' }
    const sheet = open('getting-closer', { ...own, closer_by, powers, pupil_ratio: String(PUPIL), both_tube: '12' })
    const pupil = front + 0.06 * (1 / PUPIL - 1)
    expect(sheet.number('lens_height')).toBeCloseTo(sheet.number('room') + apparent(lenses, pupil), 9)
    expect(sheet.number('lens_height')).toBeGreaterThan(sheet.number('room'))
    expect(sheet.number('lens_height')).toBeLessThan(sheet.number('sensor_height'))
  })
})

describe('the drawings of a seal smaller than the overlap of frames', () => {
  const small = { original: '30 x 22', sensor: '23.5 x 15.6', sensor_pixels: '6240 x 4168', focal: '60' }
  const drawn = (closer_by: string) => {
    const { sheet } = open('getting-closer', { ...small, closer_by, powers: '4, 5', lens_greatest: '1:5' })
    return (kind: string) => {
      const cell = sheet.cells.find((one) => one.kind === 'drawing' && one.drawing === kind)
      return sheet.drawing(cell?.id ?? '').values as unknown as Readonly<Record<string, number>>
    }
  }

  test('show the one frame, which overlaps nothing', () => {
    const { overlap, field_height } = drawn('tubes')('tiles')
    expect(field_height).toBeLessThan(0.03)
    expect(overlap).toBe(0)
  })

  test.each(['tubes', 'close-up lens', 'both'])(
    'have the lens between its rim and the sensor, with %s',
    (closer_by) => {
      const at = drawn(closer_by)('set-up')
      expect(at.lens_to_original).toBeGreaterThan(at.clear_distance as number)
      expect(at.lens_to_original).toBeLessThan((at.sensor_to_original as number) - 0.06)
    },
  )
})

test.each([
  ['tubes', [0.012, 0.02], [0]],
  ['close-up lens', [0], [2, 10]],
  ['both', [0.02], [5]],
])('at the stand what %s need is screwed on, and nothing that is only compared', (closer_by, tubes, lenses) => {
  const filled = open('getting-closer', { closer_by })
  const steps = filled.sheet.cells.flatMap((cell) => (cell.kind === 'steps' ? cell.steps : []))
  expect(steps.find(({ text }) => text.startsWith('Screw on'))?.sets).toEqual(['tubes_on', 'lenses_on'])
  expect(filled.value('tubes_on')).toEqual(tubes)
  expect(filled.value('lenses_on')).toEqual(lenses)
})
