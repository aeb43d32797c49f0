import { expect, test } from 'vitest'
import names from '../../templates/parts/names.json' with { type: 'json' }

/** Plain figures that may be a fraction though those filled in for them are whole. */
const NOT_COUNTED = [
  // Half a day is a figure of a plan, and an average per original one of an estimate.
  ...['display_days', 'days_left', 'sides_each'],
  // Marks of a level, codes that are a mean over an area, and speeds between the marks are read in between.
  ...['board_divisions', 'camera_divisions', 'code_brightest', 'code_darkest', 'code_r', 'code_g', 'code_b', 'speed'],
  ...['full_scale', 'flat_constant'],
  // Ratios, indices, differences and prices.
  ...['pupil_ratio', 'power_factor', 'filter', 'rendering_limit', 'left_rendering', 'right_rendering'],
  ...['panel_rendering', 'tone_limit', 'mean_limit', 'hour_rate', 'disk_price', 'other_outlay', 'round_up'],
]

interface Plain {
  readonly entry?: string
  readonly unit?: string
  readonly usual?: string
  readonly example?: string
  readonly whole?: boolean
}

test('givens that count take whole numbers only: which do is decided for each', () => {
  const plain = Object.entries(names.names as Record<string, Plain>).filter(
    ([, { entry, unit, usual, example }]) =>
      entry === 'quantity' && unit === '1' && Number.isInteger(Number(example ?? usual ?? 'none')),
  )
  expect(plain.length).toBeGreaterThan(40)
  expect(
    plain
      .filter(([, { whole }]) => !whole)
      .map(([name]) => name)
      .sort(),
  ).toEqual([...NOT_COUNTED].sort())
})
