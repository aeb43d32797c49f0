import { describe, expect, test } from 'vitest'
import { expectRendered, expectSettled, type Filled, open, proposed } from './open.ts'
import { openRows } from './rows.ts'

const reported = (rows: readonly (readonly string[])[]): Filled => openRows('delivery', 'quality', rows)

test('at its defaults it computes, with the container alone failing, on purpose', () => {
  const sheet = open('delivery')
  expectSettled(sheet)
  expect(sheet.failing).toEqual(['container_holds'])
  expect(sheet.message('container_holds')).toContain('at 385 ppi, if that is agreed; or in 2 parts')
  expect(open('delivery', { container: 'BigTIFF' }).failing).toEqual([])
})

describe('a plan of 1189 × 841 mm at 300 ppi, 8 bits, with smaller sizes inside', () => {
  const sheet = open('delivery', {
    original: '1189 x 841',
    wanted_sampling: '300',
    crop_margin: '8',
    askew: '1',
    bits: '8',
    smaller_inside: 'yes',
    copy_side: '3000',
    copy_bits: '2.4',
    name_pattern: 'plan-####_#.tif',
    first_number: '1200',
    items_in: '120',
    sides_more: '9',
    dropped: '1',
    parts_most: '3',
    bad_missed: '3',
    confidence: '90',
    usual: '594 x 420',
    copies: '2',
    transfer: '60',
  })

  test('is 14 233 × 10 123 pixels, margin and all', () => {
    // 1205 mm and 857 mm at 300 to the inch: 14 232.3 and 10 122.05, rounded up.
    expect(sheet.number('master_width')).toBe(14233)
    expect(sheet.number('master_height')).toBe(10123)
  })

  test('takes three bytes a pixel and a third more for the halves inside', () => {
    let pixels = 0
    for (let size = 14233 * 10123; size > 1; size /= 4) pixels += size
    expect(sheet.number('master_data') / 8e9).toBeCloseTo((3 * pixels) / 1e9, 6)
    expect(sheet.state('container_holds')).toBe('pass')
  })

  test('takes in the frame what its corners reach when it lies askew by a degree', () => {
    const turned = Math.PI / 180
    const corners = [
      [602.5, 428.5],
      [602.5, -428.5],
    ].map(([x = 0, y = 0]) => ({
      x: x * Math.cos(turned) - y * Math.sin(turned),
      y: x * Math.sin(turned) + y * Math.cos(turned),
    }))
    const across = Math.max(...corners.map(({ x }) => Math.abs(x))) - 1189 / 2
    const down = Math.max(...corners.map(({ y }) => Math.abs(y))) - 841 / 2
    expect(sheet.mm('border_needed')).toBeCloseTo(Math.max(across, down), 9)
    expect(sheet.state('margin_in_frame')).toBe('marginal')
  })

  test('is named in one length from first to last', () => {
    expect(sheet.value('first_name')).toBe('plan-1200_1.tif')
    expect(sheet.value('last_name')).toBe('plan-1319_3.tif')
  })

  test('leaves 63.2 ppi in a copy of 3000 pixels, which prints to 254 mm', () => {
    expect(sheet.number('copy_sampling') * 0.0254).toBeCloseTo((300 * 3000) / 14233, 9)
    expect(sheet.mm('copy_print')).toBeCloseTo(254, 9)
    expect(sheet.number('copy_data') / 8e6).toBeCloseTo((3000 * ((3000 * 10123) / 14233) * 2.4) / 8e6, 9)
  })

  test('is one of 128 pictures, of which 67 are looked at to find one of three faulty ones nine times in ten', () => {
    expect(sheet.number('pictures')).toBe(128)
    // The chance that none of three is among n of 128: (128−n)(127−n)(126−n)/(128 · 127 · 126).
    const missed = (n: number): number => ((128 - n) * (127 - n) * (126 - n)) / (128 * 127 * 126)
    let n = 0
    while (missed(n) > 0.1) n++
    expect(sheet.number('to_inspect')).toBe(n)
  })

  test('makes two sets, each read back at the same speed', () => {
    // 610 × 436 mm at 300 ppi, three bytes a pixel, a third more.
    const usual = (610 / 25.4) * 300 * (436 / 25.4) * 300 * 3 * (4 / 3)
    const copy = (3000 * ((3000 * 10123) / 14233) * 2.4) / 8
    const set = 128 * (usual + copy)
    expect(sheet.number('set_data') / 8).toBeCloseTo(set, 0)
    expect(sheet.number('all_data') / 8).toBeCloseTo(2 * set, 0)
    expect(sheet.number('copy_time')).toBeCloseTo((2 * set) / 60e6, 6)
  })
})

test('a TIFF of exactly 4 GiB is too large, one sampling lower is not', () => {
  const said = open('delivery').message('container_holds')
  const sampling = proposed(said, /or at (\d+) ppi/)
  expect(open('delivery', { wanted_sampling: sampling }).state('container_holds')).not.toBe('fail')
  expect(open('delivery', { wanted_sampling: String(Number(sampling) + 5) }).state('container_holds')).toBe('fail')
})

test('a name that would not travel is refused, and said so', () => {
  const [problem] = open('delivery', { name_pattern: 'wall map ###.tif' }).problems
  expect(problem).toMatch(/first_name: “Pattern of the names” has “ ”/)
})

describe('the count', () => {
  test('names what is missing, and what is too many', () => {
    expect(open('delivery', { master_files: '361' }).message('masters_agree')).toContain('2 missing')
    expect(open('delivery', { master_files: '364' }).message('masters_agree')).toContain('1 too many')
  })
})

describe('the quality report', () => {
  test('finds the frame farthest off: 392 ppi of 400 is 2 % short, 410 is 2.5 % over', () => {
    const sheet = reported([
      ['a', '392', '2', '0.05', 'accepted'],
      ['b', '410', '3.4', '0.02', 'taken again'],
    ])
    expect(sheet.number('sampling_worst')).toBeCloseTo(0.025, 12)
    expect(sheet.failing).toEqual(['container_holds', 'sampling_true', 'colour_true'])
    expect(sheet.message('colour_true')).toContain('off by 3.4 on average, 3 allowed')
  })

  test('fails for light that spreads by more than is allowed', () => {
    expect(reported([['a', '400', '1', '0.14', 'accepted']]).failing).toContain('light_even')
  })
})

describe('each check holds and fails, and says so in full', () => {
  test.each([
    ['margin_in_frame', {}, { border: '8' }],
    ['container_holds', { container: 'PNG' }, {}],
    ['container_keeps', {}, { container: 'JPEG' }],
    ['names_hold', {}, { items_in: '1200' }],
    ['copy_smaller', {}, { copy_side: '40000' }],
    ['masters_agree', {}, { master_files: '362' }],
    ['copies_agree', {}, { copy_files: '300' }],
    ['originals_back', {}, { items_back: '339' }],
    ['inspected_enough', {}, { inspected: '100' }],
    ['no_fault', {}, { faults_found: '1' }],
    ['sampling_true', {}, { sampling_limit_off: '0.2' }],
    ['colour_true', {}, { mean_limit: '2' }],
    ['light_even', {}, { even_limit: '0.05' }],
    ['disk_holds', {}, { disk: '0.08' }],
    ['sets_enough', {}, { copies: '1' }],
    ['sums_agree', {}, { sums_compared: 'no' }],
  ] as const)('%s', (check, held, failed) => {
    expectRendered(open('delivery', held), open('delivery', failed), check)
  })
})
