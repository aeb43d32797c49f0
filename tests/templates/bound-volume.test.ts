import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, open, proposed } from './open.ts'

test('at its defaults it computes; the volume opened too far fails, on purpose', () => {
  const sheet = open('bound-volume')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['opened_gently'])
})

test('200 mm straight across and 210 mm over the curve rise by 27.6 mm', () => {
  // The example of the trade's handbook beside page_bulge.
  const sheet = open('bound-volume', { original: '200 x 300', page_arc: '210' })
  expect(sheet.mm('bulge')).toBeCloseTo(27.6, 1)
})

describe('a music book of 180 leaves, taken as a whole opening of 480 × 330 mm', () => {
  const sheet = open('bound-volume', {
    original: '480 x 330',
    taken: 'the whole opening',
    page_arc: '243',
    unevenness: '0.5',
    page_step: '4',
    opened_to: '180',
    opens_safely: '180',
    leaves: '180',
    block_thickness: '27',
    wanted_sampling: '300',
    sensor: '53.4 x 40',
    sensor_pixels: '11656 x 8742',
    focal: '120',
    column_reach: '1900',
    original_thickness: '60',
    aperture: 'f/16',
    gutter_along: 'no',
    lamp_out: '1400',
    lamp_height: '1060',
    pages: '350',
    per_frame: '30',
    per_setup: '3',
    break_hour: '12',
  })
  const m = Math.min(53.4 / 500, 40 / 350)
  // Half the angle of the arc, by halving the interval on which sin φ/φ falls to 240/243.
  let [low, high] = [0.01, 1.5]
  for (let i = 0; i < 80; i++) {
    const half = (low + high) / 2
    if (Math.sin(half) / half > 240 / 243) low = half
    else high = half
  }
  const phi = low

  test('has two pages side by side', () => {
    expect(sheet.mm('page_width')).toBe(240)
    expect(sheet.number('magnification')).toBeCloseTo(m, 12)
  })

  test('has a page that is part of a circle: its sagitta, and the slope at its end', () => {
    const radius = 120 / Math.sin(phi)
    expect(2 * radius * phi).toBeCloseTo(243, 6)
    const sagitta = radius * (1 - Math.cos(phi))
    expect(sheet.mm('bulge')).toBeCloseTo(sagitta, 6)
    expect(sheet.number('page_slope')).toBeCloseTo(phi, 9)
    expect(sheet.mm('wanted_depth')).toBeCloseTo(sagitta + 0.5 + 4, 6)
  })

  test('samples the paper at the gutter by what a millimetre of it is straight across', () => {
    const radius = 120 / Math.sin(phi)
    const across = (arc: number) => radius * Math.sin(arc / radius)
    const end = 243 / 2
    const perMm = (across(end) - across(end - 1e-4)) / 1e-4
    expect(sheet.number('ppi_gutter') / sheet.number('ppi')).toBeCloseTo(perMm, 5)
  })

  test('turns the mirror zone outwards on the slope, as a ray thrown back by it goes', () => {
    const u = 120 * (1 / m + 1)
    const [edge, up] = [240, 1060 - 60]
    const length = Math.hypot(edge, u)
    const ray = [edge / length, -u / length] as const
    const normal = [Math.sin(phi), Math.cos(phi)] as const
    const along = ray[0] * normal[0] + ray[1] * normal[1]
    const back = [ray[0] - 2 * along * normal[0], ray[1] - 2 * along * normal[1]] as const
    expect(sheet.mm('mirror_edge')).toBeCloseTo(edge + (up * back[0]) / back[1], 6)
  })

  test('is lit down to the gutter by lamps at its sides while they are higher than its pages rise', () => {
    // Seen from the centre, the lamps are at atan(1000/1400) = 35.5°; the page rises by 2φ/2 = φ at the gutter.
    expect((phi * 180) / Math.PI).toBeLessThan(35.5)
    expect(sheet.state('gutter_lit')).toBe('pass')
  })

  test('has the cradle raised before the leaves turned have used up half the depth to spare', () => {
    const k = (16 * 2 * (53.4 / 11656)) / (m * 120)
    const held = (2 * 120 * (1 / m + 1) * k) / (1 - k * k)
    expect(sheet.mm('depth')).toBeCloseTo(held, 6)
    const spare = held - sheet.mm('wanted_depth')
    expect(sheet.value('raise_after')).toBe(Math.floor(spare / 2 / (27 / 180)))
  })

  test('takes 175 frames at 30 s, each raising 3 min, with a fifth of the time for breaks', () => {
    const raisings = Math.ceil(180 / (sheet.value('raise_after') as number))
    expect(sheet.value('volume_frames')).toBe(175)
    expect(sheet.value('raisings')).toBe(raisings)
    const seconds = (175 * 30 + raisings * 180) / 0.8
    expect(sheet.number('whole_time')).toBeCloseTo(seconds, 6)
    expect(sheet.number('pages_hour')).toBeCloseTo((350 / seconds) * 3600, 6)
  })
})

test('one page at a time goes through the volume twice', () => {
  const once = open('bound-volume', { taken: 'the whole opening', original: '408 x 318', aperture: 'f/16' })
  const twice = open('bound-volume', { aperture: 'f/16' })
  expect(once.value('raisings')).toBe(Math.ceil(240 / (once.value('raise_after') as number)))
  expect(twice.value('raisings')).toBe(2 * Math.ceil(240 / (twice.value('raise_after') as number)))
})

test('the set-up is drawn as the volume lies: its gutter along the line from lamp to lamp, or across it', () => {
  const drawn = (gutter_along: string) =>
    open('bound-volume', { gutter_along }).sheet.drawing('drawing_set_up').values as Record<string, number>
  const [along, across] = [drawn('yes'), drawn('no')]
  expect(across.original_width).toBeCloseTo(0.204, 12)
  expect([along.original_width, along.original_height]).toEqual([across.original_height, across.original_width])
  expect([along.field_width, along.field_height]).toEqual([across.field_height, across.field_width])
})

test('where no depth is left the cradle is raised at every leaf, by what one leaf is thick', () => {
  const shallow = open('bound-volume', { aperture: 'f/4', leaves: '310', block_thickness: '47' })
  expect(shallow.value('raise_after')).toBe(1)
  expect(shallow.mm('raise_by')).toBeCloseTo(0.15, 9)
})

test('a volume that takes longer than there is time says how many such days, and what is left to choose', () => {
  const pages = { session: '1', per_frame: '30', aperture: 'f/16' }
  const singly = open('bound-volume', pages)
  const days = Math.ceil(singly.number('whole_time') / 3600)
  expect(singly.message('fits_session')).toContain(`Plan ${days} such days, or take whole openings`)
  const wide = { ...pages, taken: 'the whole opening', original: '408 x 318' }
  expect(open('bound-volume', wide).message('fits_session')).toMatch(/Plan \d+ such days; do not turn faster\./)
})

test('an arc shorter than its chord is reported where it is worked out', () => {
  expect(open('bound-volume', { page_arc: '200' }).problems[0]).toMatch(/^bulge: .*swapped/)
})

test('the aperture proposed holds the depth', () => {
  const deep = { page_arc: '209' }
  const mark = proposed(open('bound-volume', deep).message('wanted_depth_holds'), /which takes (f\/[\d.]+)/)
  expect(open('bound-volume', { ...deep, aperture: mark }).failing).not.toContain('depth_holds')
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['opened_gently', { opened_to: '90' }, {}],
    ['sharp_enough', {}, { page_arc: '240' }],
    ['column_reaches', {}, { column_reach: '1100' }],
    ['lens_long_enough', {}, { focal: '35' }],
    ['pixels_match', {}, { sensor_pixels: '4000 x 6000' }],
    ['gutter_lit', {}, { gutter_along: 'no' }],
    ['lamps_low', {}, { lamp_height: '1200' }],
    ['lamps_clear', {}, { lamp_out: '350' }],
    ['wanted_depth_holds', {}, { page_arc: '212' }],
    ['aperture_resolves', {}, { aperture: 'f/16' }],
    ['fits_session', {}, { per_frame: '60' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('bound-volume', held), open('bound-volume', failed), check)
  })
})

test('a page so steep that it is seen from its edge fails, with figures that mean something', () => {
  // 215 mm over the curve of a page that is 102 mm across: more than half a circle.
  const steep = open('bound-volume', { taken: 'the whole opening', opened_to: '110', page_arc: '215' })
  expect(steep.problems).toEqual([])
  expect(steep.number('ppi_least')).toBeGreaterThan(0)
  expect(steep.failing).toEqual(expect.arrayContaining(['sharp_enough', 'aperture_resolves', 'depth_holds']))
})
