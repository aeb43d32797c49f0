import { expect, test } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { functionFinder } from '../../src/language/finding/find-functions.ts'

const finder = functionFinder(FUNCTIONS.map((record) => ({ record, text: record })))

/** Words of the trade, and a function that answers them. Common practice, no source. */
test.each([
  ['bellows', 'extension_for'],
  ['bellows factor', 'extension_factor'],
  ['circle of confusion', 'blur_from_pixels'],
  ['coc', 'blur_from_print'],
  ['working distance', 'clear_distance'],
  ['reproduction ratio', 'magnification_for'],
  ['polarizer', 'crossed_polariser_shift'],
  ['polariser', 'crossed_polariser_shift'],
  ['polarising filter', 'crossed_polariser_shift'],
  ['dpi', 'sampling'],
  ['sharpness', 'best_aperture'],
  ['hyperfocal', 'hyperfocal'],
  ['vignetting', 'natural_falloff'],
  ['keystone', 'keystone'],
  ['keystoning', 'keystone'],
  ['gray card', 'grey_offset'],
  ['grey card', 'white_balance_gains'],
  ['colour temperature', 'mired'],
  ['color temperature', 'mired'],
  ['dioptre', 'closeup_stack'],
  ['diopter', 'closeup_stack'],
  ['depth of field', 'depth_of_field'],
  ['file size', 'frame_data'],
  ['average', 'mean'],
  ['hyperfocla', 'hyperfocal'],
  ['vigneting', 'natural_falloff'],
  ['magnificaton', 'magnification_for'],
  ['difraction', 'airy_diameter'],
])('%s finds %s among the first eight', (words, name) => {
  expect(finder.find(words).slice(0, 8)).toContain(name)
})

test('a function is the first to be found by its own name', () => {
  for (const { name } of FUNCTIONS) expect(finder.find(name.replaceAll('_', ' ')).slice(0, 4), name).toContain(name)
})

test('words that no function has find nothing', () => {
  expect(finder.find('xylophone')).toEqual([])
  expect(finder.find('')).toEqual([])
})
