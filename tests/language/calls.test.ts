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
    ['sqroot(4)', 'sqroot', ['sqrt(4)']],
    ['toString(4)', 'toString', []],
    ['sqrt', 'sqrt', []],
    ['sqrt(4, 5)', '5', ['sqrt(4)']],
    ['sqrt()', 'sqrt()', ['sqrt(x: x)']],
    ['min(infinity, 2)', 'infinity', []],
    ['infinity', 'infinity', []],
    ['max(1 mm, 2 s)', '2 s', []],
  ] as const)('%s is refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test.each([
    ['depth_of_field(f/11, blr: 12 um, magnification: 1:4, focal: 60 mm)', 'blr'],
    ['depth_of_field(f/11, blur: 12 um, blur: 12 um, magnification: 1:4)', 'blur: 12 um'],
    ['depth_of_field(aperture: f/11, 12 um, magnification: 1:4, focal: 60 mm)', '12 um'],
    ['depth_of_field(f/11, 12, 1:4, 60 mm)', '12'],
  ])('%s is wrong at “%s”', (text, at) => {
    expect(diagnosed(text).map((found) => text.slice(found.from, found.to))).toContain(at)
  })

  test('fixes a misspelt argument and a missing unit', () => {
    expectRefused('depth_of_field(f/11, 12, 1:4, 60 mm)', '12', ['depth_of_field(f/11, 12 mm, 1:4, 60 mm)'])
    expectRefused('depth_of_field(f/11, 12 um, 1:4, 60 mm, pupil_ration: 1)', 'pupil_ration', [
      'depth_of_field(f/11, 12 um, 1:4, 60 mm, pupil_ratio: 1)',
    ])
  })
})

describe('names', () => {
  test.each([
    ['widht', 'widht', ['width']],
    ['Pi', 'Pi', ['pi']],
    ['nothing_like_it', 'nothing_like_it', []],
    ['__proto__', '__proto__', []],
    ['constructor', 'constructor', []],
  ] as const)('%s, which is none, is refused at “%s”', (text, at, fixes) => {
    expectRefused(text, at, fixes)
  })

  test('each unknown in a formula is reported', () => {
    expect(diagnosed('aaa + bbb').map(({ from, to }) => [from, to])).toEqual([
      [0, 3],
      [6, 9],
    ])
  })
})

describe('a list', () => {
  test('holds values of one kind', () => {
    expect(shown('{12 mm, 20 mm, 36 mm}')).toBe('{12 mm, 20 mm, 36 mm}')
    expectRefused('{1 mm, 2}', '2', ['{1 mm, 2 mm}'])
    expectRefused('{}', '{}', [])
    expectRefused('{1, lit}', 'lit', [])
  })
})

describe('a record’s part', () => {
  test('is named after a point', () => {
    expect(shown('sensor.width / 2')).toBe('18 mm')
    expectRefused('sensor.widht', 'widht', ['sensor.width'])
    expectRefused('width.length', '.length', ['width'])
    expectRefused('sensor.constructor', 'constructor', ['sensor.width', 'sensor.height'])
    expectRefused('sensor.__proto__', '__proto__', ['sensor.width', 'sensor.height'])
    expectRefused('sensor + 1 mm', 'sensor', ['sensor.width + 1 mm', 'sensor.height + 1 mm'])
  })
})
