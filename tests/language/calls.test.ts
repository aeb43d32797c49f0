import { describe, expect, test } from 'vitest'
import { computed, diagnosed, expectRefused, shown } from './make.ts'

describe('a call', () => {
  test('takes arguments by place or by name, in any order, with the same result', () => {
    const value = computed('depth_of_field(f/11, 12 um, 1:4, 60 mm)').value
    expect(computed('depth_of_field(f/11, blur: 12 um, magnification: 1:4, focal: 60 mm)').value).toEqual(value)
    expect(computed('depth_of_field(focal: 60 mm, magnification: 1:4, blur: 12 um, aperture: f/11)').value).toEqual(
      value,
    )
    expect(computed('depth_of_field(f/11, 12 um, 1:4, 60 mm, pupil_ratio: 1)').value).toEqual(value)
  })

  test.each([
    ['sqroot(4)', 'sqroot', /There is no function «sqroot». Did you mean «sqrt»/, ['sqrt(4)']],
    ['toString(4)', 'toString', /There is no function «toString»/, []],
    ['sqrt', 'sqrt', /is a function; its arguments stand in parentheses/, []],
    ['sqrt(4, 5)', '5', /sqrt takes one argument/, []],
    ['sqrt()', 'sqrt()', /sqrt lacks «x»/, []],
    ['min(infinity, 2)', 'infinity', /cannot be infinite/, []],
    ['infinity', 'infinity', /stands only as an argument/, []],
    ['max(1 mm, 2 s)', '2 s', /wanted a length, as «value» is, found a time/, []],
  ] as const)('%s is refused at «%s»', (text, at, says, fixes) => {
    expectRefused(text, at, says, fixes)
  })

  test.each([
    ['depth_of_field(f/11, blr: 12 um, magnification: 1:4, focal: 60 mm)', 'blr', /Did you mean «blur»/],
    ['depth_of_field(f/11, blur: 12 um, blur: 12 um, magnification: 1:4)', 'blur: 12 um', /given twice/],
    ['depth_of_field(aperture: f/11, 12 um, magnification: 1:4, focal: 60 mm)', '12 um', /must be named too/],
    ['depth_of_field(f/11, 12, 1:4, 60 mm)', '12', /wanted a length, found a plain number/],
  ])('%s says what is wrong with «%s»', (text, at, says) => {
    const found = diagnosed(text).find(({ message }) => says.test(message))
    expect(found && text.slice(found.from, found.to)).toContain(at)
  })

  test('fixes a misspelt argument and a missing unit', () => {
    expectRefused('depth_of_field(f/11, 12, 1:4, 60 mm)', '12', /found a plain number/, [
      'depth_of_field(f/11, 12 mm, 1:4, 60 mm)',
    ])
    expectRefused(
      'depth_of_field(f/11, 12 um, 1:4, 60 mm, pupil_ration: 1)',
      'pupil_ration',
      /Did you mean «pupil_ratio»/,
      ['depth_of_field(f/11, 12 um, 1:4, 60 mm, pupil_ratio: 1)'],
    )
  })
})

describe('names', () => {
  test.each([
    ['widht', 'widht', /no cell named «widht». Did you mean «width»/, ['width']],
    ['Pi', 'Pi', /Did you mean «pi»/, ['pi']],
    ['nothing_like_it', 'nothing_like_it', /There is no cell named/, []],
    ['__proto__', '__proto__', /There is no cell named/, []],
    ['constructor', 'constructor', /There is no cell named/, []],
  ] as const)('%s, which is none, is refused at «%s»', (text, at, says, fixes) => {
    expectRefused(text, at, says, fixes)
  })

  test('each unknown in a formula is told of', () => {
    expect(diagnosed('aaa + bbb').map(({ from, to }) => [from, to])).toEqual([
      [0, 3],
      [6, 9],
    ])
  })
})

describe('a list', () => {
  test('holds values of one kind', () => {
    expect(shown('{12 mm, 20 mm, 36 mm}')).toBe('{12 mm, 20 mm, 36 mm}')
    expectRefused('{1 mm, 2}', '2', /the first is a length, this is a plain number/, ['{1 mm, 2 mm}'])
    expectRefused('{}', '{}', /at least one value/, [])
    expectRefused('{1, lit}', 'lit', /this is yes or no/, [])
  })
})

describe('a record’s part', () => {
  test('is named after a point', () => {
    expect(shown('sensor.width / 2')).toBe('18 mm')
    expectRefused('sensor.widht', 'widht', /A size has no part «widht»; it has width, height/, ['sensor.width'])
    expectRefused('width.length', '.length', /Only a record has parts; this is a length/, [])
    expectRefused('sensor.constructor', 'constructor', /has no part/, [])
    expectRefused('sensor.__proto__', '__proto__', /has no part/, [])
    expectRefused('sensor + 1 mm', 'sensor', /found a size/, [])
  })
})
