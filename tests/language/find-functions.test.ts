import { describe, expect, test } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { functionFinder } from '../../src/language/finding/find-functions.ts'
import { TEXT } from '../../src/language/index.ts'

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

describe('words find a function', () => {
  const functions = (...texts: readonly (readonly [name: string, about: string, also?: readonly string[]])[]) =>
    functionFinder(
      texts.map(([name, about, also]) => ({
        record: { name, parameters: [{ name: 'lens_height', type: TEXT, about: 'its own argument' }] },
        text: { about, formula: 'h = u / v', ...(also ? { also } : {}) },
      })),
    )

  test.each([
    ['color', 'colour'],
    ['colours', 'color'],
    ['grey', 'gray'],
    ['greyer', 'grayer'],
    ['greys', 'grays'],
    ['metre', 'meter'],
    ['centres', 'center'],
    ['fibre', 'fibers'],
    ['dioptres', 'diopter'],
    ['polarise', 'polarize'],
    ['polariser', 'polarizers'],
    ['polarising', 'polarizing'],
    ['polarisation', 'polarization'],
    ['polarised', 'polarized'],
    ['modelling', 'modeling'],
    ['modelled', 'modeled'],
    ['lamps', 'lamp'],
    ['LAMP', 'lamps'],
  ])('“%s” written as “%s”', (asked, written) => {
    for (const [one, other] of [
      [asked, written],
      [written, asked],
    ] as const)
      expect(functions(['wanted', `about ${one} alone`], ['other', 'something else']).find(other)).toEqual(['wanted'])
  })

  test('whose ending is no plural in full alone', () => {
    const finder = functions(['glass', 'of glass'], ['bus', 'of a bus'], ['our', 'of it'])
    expect(finder.find('glas')).toEqual(['glass'])
    expect(finder.find('gla')).toEqual(['glass'])
    expect(finder.find('gl')).toEqual([])
    expect(finder.find('bus')).toEqual(['bus'])
    expect(finder.find('bu')).toEqual([])
  })

  test('with a slip in a word of five letters and two in one of eight, none in a shorter one', () => {
    const finder = functions(['wanted', 'bulb prism keystone'])
    expect(finder.find('bulp')).toEqual([])
    expect(finder.find('prisn')).toEqual(['wanted'])
    expect(finder.find('brisn')).toEqual([])
    expect(finder.find('keistome')).toEqual(['wanted'])
    expect(finder.find('keistane')).toEqual(['wanted'])
    expect(finder.find('kaistame')).toEqual([])
  })

  test('by its name, its synonyms, its arguments and its formula, a name before a synonym and that before the rest', () => {
    const finder = functions(
      ['first', 'said of a bellows'],
      ['second', 'something', ['a bellows', 'another']],
      ['bellows_factor', 'something else'],
    )
    expect(finder.find('bellows')).toEqual(['bellows_factor', 'second', 'first'])
    expect(finder.find('lens height')).toHaveLength(3)
    expect(finder.find('argument')).toHaveLength(3)
    expect(finder.find('another')).toEqual(['second'])
    expect(finder.find('u')).toHaveLength(3)
    expect(finder.find('also')).toEqual([])
  })

  test('that has all of them, else those that have some; small words do not count', () => {
    const finder = functions(['one', 'film and glass'], ['two', 'film'], ['three', 'paper'])
    expect(finder.find('film glass')).toEqual(['one'])
    expect(finder.find('film paper')).toEqual(expect.arrayContaining(['two', 'three']))
    expect(finder.find('the film of a glass')).toEqual(['one'])
    expect(finder.find('of the and')).toEqual([])
    expect(finder.find('ofthe')).toEqual([])
  })

  test('first by its own name, however it is spaced and written', () => {
    const finder = functions(
      ['depth_of_field', 'the depth'],
      ['field', 'depth of field, field depth, depth field', ['depth of field']],
    )
    for (const words of ['depth of field', ' Depth  of-field ', 'depth_of_field', 'depth - of field'])
      expect(finder.find(words)[0], words).toBe('depth_of_field')
    expect(finder.find('depth of field')).toEqual(['depth_of_field', 'field'])
  })

  test('and nothing that only resembles them where another fits well', () => {
    const finder = functions(
      ['keystone', 'keystone', ['keystone']],
      ['other', `${'many other words about this and that '.repeat(20)} keystones`],
      ['third', `${'many other words about this and that '.repeat(20)} keystune`],
    )
    expect(finder.find('keystone')).toEqual(['keystone', 'other'])
    expect(finder.find('keystune')).toEqual(expect.arrayContaining(['third']))
  })
})
